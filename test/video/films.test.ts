import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { filmFile, picturesOf } from "#cli/filmPictures";
import { tapsOf } from "#contract/videoTaps";
import { FIGURE_IDS } from "#engine/video/figures";
import { readPictures, type TimedFrame } from "#engine/video/readPictures";
import { fileWith, inProcess } from "../cli/commandLine.ts";

const FILMS = join(import.meta.dirname, "films");
const read = (name: string) => JSON.parse(readFileSync(join(FILMS, name), "utf8"));
const HAS_FFMPEG = spawnSync("ffmpeg", ["-version"]).status === 0;
const command = (film: string, taps: object) => inProcess("video", film, "--taps", fileWith(JSON.stringify(taps), "taps.json"), "--json");

/** A build machine has it, and there its lack is a fault; elsewhere the command says what is missing. */
if (!HAS_FFMPEG) {
  it("without ffmpeg a film is not read, and that is said", async () => {
    expect(process.env.CI).toBeUndefined();
    const { code, stdout } = await command(join(FILMS, "two-lanes.mp4"), read("two-lanes.taps.json"));
    expect(code).toBe(3);
    expect(JSON.parse(stdout).refused[0].id).toBe("noFfmpeg");
  });
} else {
  describe("a film of an invented shot", () => {
    it("is read as the shot that was drawn, a ball on the next lane and the bowler's back beside it", { timeout: 120_000 }, async () => {
      const { code, stdout } = await command(join(FILMS, "two-lanes.mp4"), read("two-lanes.taps.json"));
      expect(code).toBe(0);
      const { shots } = JSON.parse(stdout);
      expect(shots).toHaveLength(1);
      const truth = read("two-lanes.truth.json");
      for (const id of FIGURE_IDS) {
        const { value, low, high } = shots[0].figures[id];
        expect(Math.abs(value - truth[id]), id).toBeLessThan(0.8 * (high - low));
      }
      expect(Math.abs(shots[0].figures.boardAtPins.value - truth.boardAtPins)).toBeLessThan(0.6);
      expect(Math.abs(shots[0].figures.launchSpeedMph.value - truth.launchSpeedMph)).toBeLessThan(0.25);
    });

    it("with the next lane's head pin pointed at is refused: there are no edges where the lane would be", {
      timeout: 120_000,
    }, async () => {
      const taps = read("two-lanes.taps.json");
      const { code, stdout } = await command(join(FILMS, "two-lanes.mp4"), {
        ...taps,
        headPinFoot: [taps.headPinFoot[0] + 95, taps.headPinFoot[1]],
      });
      expect(code).toBe(3);
      expect(JSON.parse(stdout).refused.map(({ id }: { id: string }) => id)).toEqual(["noEdges"]);
    });

    it("with a ball of the lane's own colour is refused", { timeout: 120_000 }, async () => {
      const { code, stdout } = await command(join(FILMS, "like-the-lane.mp4"), read("like-the-lane.taps.json"));
      expect(code).toBe(3);
      expect(JSON.parse(stdout).refused.map(({ id }: { id: string }) => id)).toContain("noContrast");
    });

    it("from a camera that moves is refused", { timeout: 120_000 }, async () => {
      const file = await filmFile(join(FILMS, "two-lanes.mp4"));
      if (typeof file === "string") throw new Error(file);
      async function* shaken(): AsyncGenerator<TimedFrame> {
        let picture = 0;
        for await (const frame of picturesOf(file as Exclude<typeof file, string>)) {
          const by = 3 * Math.round(2 * Math.sin(picture++ / 4));
          const rgb = frame.rgb.slice();
          if (by > 0) rgb.set(frame.rgb.subarray(0, frame.rgb.length - by), by);
          else if (by < 0) rgb.set(frame.rgb.subarray(-by), 0);
          yield { ...frame, rgb };
        }
      }
      const { refused } = await readPictures({
        run: shaken,
        taps: tapsOf(read("two-lanes.taps.json"), 1),
        hand: "right",
        readout: { readoutS: 0.01, readoutWithinS: 0.004 },
      });
      expect(refused.map(({ id }) => id)).toEqual(["cameraMoved"]);
    });

    it.each([
      ["is no video", fileWith("not a video at all", "a.mp4"), "notAVideo"],
      ["has a name that ffmpeg could take for an option", fileWith("-", "-i.mp4"), "notAVideo"],
    ])("that %s has a sentence", async (_, path, id) => {
      const { code, stdout } = await command(path, read("two-lanes.taps.json"));
      expect(code).toBe(3);
      expect(JSON.parse(stdout).refused[0].id).toBe(id);
    });
  });
}
