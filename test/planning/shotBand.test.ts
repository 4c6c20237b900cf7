import { describe, expect, it } from "vitest";
import { KNOWN_BY_WORD } from "#engine/delivery/words";
import { groundIn, throwerOn } from "#engine/planning/ground";
import { meanShot } from "#engine/planning/rating";
import { filmFound } from "#engine/planning/session";
import { shotBand } from "#engine/planning/shotBand";
import { STYLES } from "#engine/planning/situations";
import { parseFinish } from "#engine/surface/finish";
import { ensemble } from "#engine/worlds/ensemble";
import { asked } from "./questions.ts";

const LINE = { laydownBoard: 20, launchAngleDeg: 2 };
const FINISH = parseFinish("2000");
const question = asked("matched", "hybrid", "medium-41");

describe("a shot in the worlds", () => {
  const band = shotBand(question, FINISH, LINE);

  it("names where nine worlds of ten have it: counted anew over worlds that were not asked for it", () => {
    const { draws, drawn, worlds } = ensemble();
    const others = Array.from({ length: worlds.length }, (_, i) => drawn(draws - 1 - i)).map((world) => {
      const ground = groundIn(world, question);
      return { weight: world.weight, shot: meanShot(throwerOn(filmFound(ground), ground.question, FINISH, ground.assumed), LINE) };
    });
    const total = others.reduce((sum, { weight }) => sum + weight, 0);
    for (const id of ["boardAtPins", "entryAngleDeg", "hookStartFt", "speedAtPinsMph"] as const) {
      const { low, high } = band[id] ?? { low: Number.NaN, high: Number.NaN };
      const inside =
        others.reduce((sum, { weight, shot }) => sum + (Number(shot[id]) >= low && Number(shot[id]) <= high ? weight : 0), 0) / total;
      expect(inside, id).toBeGreaterThan(0.83);
      expect(inside, id).toBeLessThan(0.97);
    }
  });

  it("is wider where the delivery was guessed from a word", () => {
    const guessed = shotBand({ ...question, bowler: { ...STYLES.matched, known: KNOWN_BY_WORD } }, FINISH, LINE);
    const width = (of: typeof band) => (of.boardAtPins?.high ?? 0) - (of.boardAtPins?.low ?? 0);
    expect(width(guessed)).toBeGreaterThan(1.15 * width(band));
    const speed = (of: typeof band) => (of.speedAtPinsMph?.high ?? 0) - (of.speedAtPinsMph?.low ?? 0);
    expect(speed(guessed)).toBeGreaterThan(2 * speed(band));
  });

  it("gives no board for a ball that leaves the lane in most worlds", () => {
    const out = shotBand(question, FINISH, { laydownBoard: 9, launchAngleDeg: 4.5 });
    expect(out.boardAtPins).toBeNull();
    expect(out.entryAngleDeg).toBeNull();
  });

  it("is the same each time", () => {
    expect(shotBand(question, FINISH, LINE)).toEqual(band);
  });
});
