import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { FIGURE_IDS } from "#engine/video/figures";
import { inventedShot } from "../../tools/video/shots.ts";
import { EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

const EXAMPLE = join(EXAMPLES, "video-sightings.yaml");
const example = () => parse(readFileSync(EXAMPLE, "utf8"));
/** The example is this shot: tools/videoExample.ts. */
const TRUTH = inventedShot(70_005);

describe("gritwright video", () => {
  it("reads the example as the shot it was made from", async () => {
    const { code, stdout } = await inProcess("video", EXAMPLE, "--json");
    expect(code).toBe(0);
    const { gritwright, kind, shots, refused } = JSON.parse(stdout);
    expect([gritwright, kind, refused]).toEqual([1, "video", []]);
    expect(shots).toHaveLength(1);
    const [{ samples, figures, why }] = shots;
    expect(Object.keys(figures)).toEqual([...FIGURE_IDS]);
    expect(why).toEqual({});
    const { bowler, line } = TRUTH.setup;
    const { phases, course } = TRUTH.shot;
    // Approved on the truth itself: nine of ten lie within their intervals, all within a little more.
    const truth = [
      bowler.speedMph,
      line.launchAngleDeg,
      line.laydownBoard,
      phases.hookStartFt ?? 0,
      phases.breakpoint.yFt,
      phases.breakpoint.board,
      course.entryAngleDeg ?? 0,
      course.boardAtPins ?? 0,
      phases.speedAtPinsMph ?? 0,
      bowler.revRateRpm * Math.cos((bowler.axisTiltDeg * Math.PI) / 180),
    ];
    FIGURE_IDS.forEach((id, i) => {
      const { value, low, high } = figures[id];
      expect(Math.abs(value - truth[i]), id).toBeLessThan(1.6 * ((high - low) / 2));
    });
    expect(samples[0].yFt).toBe(0);
    for (const { yFt, board, boardLow, boardHigh } of samples) {
      const there = TRUTH.shot.samples.find((sample) => Math.abs(sample.yFt - yFt) < 1e-6);
      expect(boardLow).toBeLessThan(board);
      expect(board).toBeLessThan(boardHigh);
      expect(Math.abs(board - (there?.board ?? 0)), `${yFt} ft`).toBeLessThan(0.8);
    }
  });

  it("tells each figure with its interval, and what is not told with why", async () => {
    const { stdout } = await inProcess("video", EXAMPLE);
    expect(stdout).toMatch(/Launch speed +18\.\d mph {2}\(18\.\d mph to 1\d\.\d mph\)/);
    expect(stdout).toContain("computed videos only");
    const file = example();
    const { stdout: short } = await inProcess("video", fileWith(JSON.stringify({ ...file, pictures: file.pictures.slice(0, -12) })));
    expect(short).toMatch(/At the pins +–/);
    expect(short).toContain("not seen past 58 ft");
  });

  it("where nothing can be read puts the document to standard output, the sentence beside it, and ends with 3", async () => {
    const file = example();
    const blind = fileWith(JSON.stringify({ ...file, pictures: file.pictures.map(({ tS }: { tS: number }) => ({ tS, ball: null })) }));
    const { code, stdout, stderr } = await inProcess("video", blind);
    expect(code).toBe(3);
    expect(JSON.parse(stdout)).toMatchObject({
      kind: "video",
      shots: [],
      refused: [{ id: "noBall", text: expect.stringMatching(/^No ball was seen/) }],
    });
    expect(stderr).toContain("No ball was seen");
    expect((await inProcess("video", blind, "--json")).stderr).toBe("");
  });

  it.each([
    ['{ "tS": 1, "u": 5, "v": 5 }', /u, v and radiusPx, or ball: null/],
    ['{ "tS": 1, "u": 5, "v": 5, "radiusPx": 0 }', /pictures\[0\]\.radiusPx/],
    ['{ "tS": 1, "ball": 3 }', /pictures\[0\]\.ball/],
    ['{ "u": 5, "v": 5, "radiusPx": 9 }', /pictures\[0\]\.tS/],
  ])("refuses the picture %s by its field", async (picture, says) => {
    const text = `{ "gritwright": 1, "image": { "width": 1920, "height": 1080 }, "hand": "right", "marks": [], "pictures": [${picture}] }`;
    const { code, stderr } = await inProcess("video", fileWith(text));
    expect(code).toBe(2);
    expect(stderr).toMatch(says);
  });

  it.each([
    ["marks all in one pixel", (file: Example) => ({ ...file, marks: file.marks.map((mark) => ({ ...mark, u: 300, v: 300 })) })],
    [
      "a ball that stands still",
      (file: Example) => ({ ...file, pictures: file.pictures.map(({ tS }) => ({ tS, u: 400, v: 700, radiusPx: 30 })) }),
    ],
    ["pictures of one moment", (file: Example) => ({ ...file, pictures: file.pictures.map((picture) => ({ ...picture, tS: 1 })) })],
    [
      "a ball that rolls back",
      (file: Example) => ({ ...file, pictures: file.pictures.map((picture) => ({ ...picture, tS: -picture.tS })) }),
    ],
    [
      "balls of a pixel and of a wall",
      (file: Example) => ({
        ...file,
        pictures: file.pictures.map((picture, i) => ("u" in picture ? { ...picture, radiusPx: i % 2 ? 1 : 8000 } : picture)),
      }),
    ],
  ])("of %s has a sentence, and no figure that is none", async (_, spoil) => {
    const { code, stdout } = await inProcess("video", fileWith(JSON.stringify(spoil(example()))), "--json");
    expect(code).toBe(3);
    const { refused } = JSON.parse(stdout);
    expect(refused.length).toBeGreaterThan(0);
    expect(JSON.stringify(refused)).not.toMatch(/NaN|Infinity|undefined/);
  });
});

interface Example {
  readonly marks: readonly object[];
  readonly pictures: readonly { readonly tS: number }[];
}
