import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PAGE_PAINT } from "#drawing/paint";
import { type OnBall, placedOn, turnedGlobe } from "#drawing/turnedGlobe";
import { ballCells } from "#engine/surface/padWork/cells";
import { SIDE_AXES } from "#engine/surface/padWork/sides";
import { aboutAxis, type Quaternion, turnBetween, type Vector } from "#engine/vector";

const NO_TURN: Quaternion = [1, 0, 0, 0];
const RIGHT: Vector = [1, 0, 0];
const TOWARDS: Vector = [0, 0, 1];
const NOTHING: OnBall = { places: { pap: null, pin: null, massBias: null, lines: [], track: [] }, work: null };
const onBall = (places: Partial<OnBall["places"]>, work: OnBall["work"] = null): OnBall => ({
  places: { ...NOTHING.places, ...places },
  work,
});
const CELLS = 1000;
const grainsIn = (svg: string) => svg.match(/h0/g)?.length ?? 0;

describe("a ball that is turned", () => {
  it("has the grip in the middle, a quarter turn puts it on the rim, and another behind", () => {
    const grip = SIDE_AXES.grip;
    expect(placedOn(NO_TURN, grip)).toEqual({ x: 0.5, y: 0.5, isSeen: true });
    const rim = placedOn(aboutAxis([0, 1, 0], Math.PI / 2), grip);
    expect(rim.x - 0.5).toBeCloseTo(0.37, 9);
    expect(rim.isSeen).toBe(false);
    expect(placedOn(aboutAxis([0, 1, 0], Math.PI), grip).isSeen).toBe(false);
  });

  it("shows holes, pin and track where they face one, and none of them from behind", () => {
    const ball = onBall({
      pin: TOWARDS,
      track: [
        [0, 0.1, 0.995],
        [0, -0.1, 0.995],
      ],
    });
    const front = turnedGlobe(ball, NO_TURN);
    const behind = turnedGlobe(ball, aboutAxis([0, 1, 0], Math.PI));
    const filled = (svg: string, colour: string) => svg.split(`fill="${colour}"`).length - 1;
    expect([filled(front, PAGE_PAINT.ink), filled(front, PAGE_PAINT.accent)]).toEqual([3, 1]);
    expect([filled(behind, PAGE_PAINT.ink), filled(behind, PAGE_PAINT.accent)]).toEqual([0, 0]);
    expect(behind).toContain('d="" fill="none"');
  });

  it("the axis stands out of the ball before it, or begins behind it", () => {
    const drawnAt = (svg: string) => [svg.indexOf('stroke-width="4"'), svg.indexOf("<circle")];
    const [before, ball] = drawnAt(turnedGlobe(onBall({ pap: TOWARDS }), NO_TURN));
    expect(before).toBeGreaterThan(ball);
    const [behind, after] = drawnAt(turnedGlobe(onBall({ pap: TOWARDS }), turnBetween(TOWARDS, [0, 0.6, -0.8])));
    expect(behind).toBeLessThan(after);
  });

  it("grains lie on the half that is seen, denser where the pad worked more", () => {
    const worked = (overMean: (place: Vector) => number) => ({ cells: CELLS, overMean: ballCells(CELLS).at.map(overMean) });
    const even = grainsIn(
      turnedGlobe(
        onBall(
          {},
          worked(() => 1),
        ),
        NO_TURN,
      ),
    );
    // Of all places half are seen, and of those 1 in 1.8 is drawn where the work is the mean.
    expect(even / CELLS).toBeCloseTo(0.5 / 1.8, 1);
    const rightOnly = onBall(
      {},
      worked(([x]) => (x > 0 ? 2 : 0)),
    );
    expect(grainsIn(turnedGlobe(rightOnly, turnBetween(RIGHT, TOWARDS)))).toBeGreaterThan(0.45 * CELLS);
    expect(grainsIn(turnedGlobe(rightOnly, turnBetween([-1, 0, 0], TOWARDS)))).toBe(0);
  });

  it("however it is turned every figure is one", () => {
    const at = fc.double({ min: -1, max: 1, noNaN: true });
    const ball = onBall({
      pap: [0.6, 0, 0.8],
      pin: [0, 0.6, 0.8],
      massBias: [0, -1, 0],
      lines: [[TOWARDS, RIGHT]],
      track: [RIGHT, TOWARDS],
    });
    fc.assert(
      fc.property(at, at, at, fc.double({ min: -10, max: 10, noNaN: true }), (x, y, z, angle) => {
        fc.pre(Math.hypot(x, y, z) > 0.1);
        expect(turnedGlobe(ball, aboutAxis([x, y, z], angle))).not.toMatch(/NaN|Infinity/);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});
