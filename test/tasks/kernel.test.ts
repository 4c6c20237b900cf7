import { readFileSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { COVERS } from "#engine/ball/covers";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { laneFriction } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { PINS_PLANE, xToBoard } from "#engine/lane/geometry";
import { PATTERN_IDS } from "#engine/lane/patterns";
import { emptyRun, runAveraged } from "#engine/motion/averaged";
import { averagedBall, gripOnLane } from "#engine/motion/ground";
import { bringKernel, scoredShots } from "#engine/motion/manyShots";
import { plainKernel } from "#engine/motion/plainKernel";
import { MOST_SHOTS, SHOT_NUMBERS, type ShotKernel } from "#engine/motion/shotKernel";
import { evenPoints } from "#engine/random";
import { DEGREE, FOOT } from "#engine/units";
import { bringVectorKernel, vectorKernel } from "#tasks/kernel/vectorKernel";
import { runUnit } from "#tasks/runUnit";
import { compiledKernel, KERNEL_BYTES, kernelModule } from "../../tools/kernel/compile.ts";
import { asked } from "../planning/questions.ts";

const VARIED = 6;

/** Deliveries from hardly moving to as fast as anybody throws, with any spin, from anywhere on the lane to either side. */
function starts(count: number, seed: number) {
  const points = evenPoints(count, VARIED, seed);
  return Array.from({ length: count }, (_, i) => {
    const [speed, revs, rotation, tilt, board, launch] = points.subarray(i * VARIED, (i + 1) * VARIED);
    const delivery = {
      speedMph: 0.5 + 24 * speed,
      revRateRpm: 600 * revs,
      axisRotationDeg: 180 * rotation - 60,
      axisTiltDeg: 60 * tilt - 20,
    };
    return release(delivery, { laydownBoard: 1 + 38 * board, launchAngleDeg: 16 * launch - 8 });
  });
}

type Start = ReturnType<typeof release>;

function load({ shots }: ShotKernel, from: readonly Start[], radius: number): void {
  for (const [shot, { x, vx, vy, wx, wy }] of from.entries()) {
    for (const [column, value] of [x, vx, vy, vx - radius * wy, vy + radius * wx].entries()) shots[column * MOST_SHOTS + shot] = value;
  }
}

const COVER_IDS = Object.keys(COVERS) as readonly CoverId[];
const LANES = PATTERN_IDS.flatMap((id) => COVER_IDS.map((cover, i) => ({ id, cover, roughnessUm: [0.12, 0.3, 0.7, 1.1, 0.45][i % 5] })));
const assumed = assume();

function loaded(): ShotKernel {
  const vector = vectorKernel();
  if (vector === null) throw new Error("This machine has no vectors in WebAssembly.");
  return vector;
}

describe("the vector kernel", () => {
  it("is what its source says, byte for byte", async () => {
    expect(readFileSync(KERNEL_BYTES, "utf8")).toBe(kernelModule(await compiledKernel()));
  });

  it("gives the same bits as the plain kernel, for balls that arrive, stop, turn round or leave the lane", () => {
    const [vector, plain] = [loaded(), plainKernel()];
    let stopped = 0;
    for (const [seed, { id, cover, roughnessUm }] of LANES.entries()) {
      const ball = averagedBall({ ...TYPICAL_BALL, cover }, assumed["roll.resistance"]);
      // A count that is no multiple of four: the rest of a vector is nobody's.
      const from = starts(333 + (seed % 4), seed + 1);
      for (const kernel of [vector, plain]) {
        gripOnLane(filmOfPattern({ kind: "named", id }), { cover }, roughnessUm, assumed, kernel.grip);
        load(kernel, from, ball.radius);
        kernel.run(from.length, scoredShots(ball));
      }
      for (let column = 0; column < SHOT_NUMBERS; column++) {
        const ended = (kernel: ShotKernel) => kernel.shots.slice(column * MOST_SHOTS, column * MOST_SHOTS + from.length);
        expect(ended(vector)).toEqual(ended(plain));
      }
      stopped += from.length - plain.shots.slice(6 * MOST_SHOTS, 6 * MOST_SHOTS + from.length).reduce((sum, one) => sum + one, 0);
    }
    expect(stopped).toBeGreaterThan(20);
  });

  it("is left out where WebAssembly may not be compiled, and nothing breaks", () => {
    const { WebAssembly: own } = globalThis;
    try {
      Object.assign(globalThis, { WebAssembly: undefined });
      expect(vectorKernel()).toBeNull();
      expect(() => bringVectorKernel()).not.toThrow();
    } finally {
      Object.assign(globalThis, { WebAssembly: own });
    }
  });
});

describe("shots of a kernel against the averaged model in steps of 0.02 ft", () => {
  const shots = LANES.flatMap(({ id, cover, roughnessUm }, seed) => {
    const kernel = plainKernel();
    const film = filmOfPattern({ kind: "named", id });
    const friction = laneFriction(film, cover, roughnessUm, assumed)(assumed);
    const ball = averagedBall({ ...TYPICAL_BALL, cover }, assumed["roll.resistance"]);
    const styles = evenPoints(24, 5, seed + 1);
    const from = Array.from({ length: 24 }, (_, i) => {
      const [speed, revs, rotation, board, launch] = styles.subarray(i * 5, i * 5 + 5);
      const delivery = { speedMph: 14 + 7 * speed, revRateRpm: 200 + 250 * revs, axisRotationDeg: 20 + 50 * rotation, axisTiltDeg: 14 };
      return release(delivery, { laydownBoard: 10 + 22 * board, launchAngleDeg: 4 * launch - 0.5 });
    });
    gripOnLane(film, { cover }, roughnessUm, assumed, kernel.grip);
    load(kernel, from, ball.radius);
    kernel.run(from.length, scoredShots(ball));
    const run = emptyRun();
    return from.flatMap((start, shot) => {
      runAveraged(ball, friction, start, 0, run, null, PINS_PLANE, 0.02 * FOOT);
      const at = (column: number) => kernel.shots[column * MOST_SHOTS + shot];
      const board = xToBoard(run.x);
      // Beside the pins nothing is scored.
      if (run.reached === 0 || board < 3 || board > 37) return [];
      return [
        {
          boards: xToBoard(at(0)) - board,
          entryDeg: (Math.atan2(-at(1), at(2)) - Math.atan2(-run.vx, run.vy)) / DEGREE,
          breakpoint: xToBoard(at(5)) - xToBoard(run.breakX),
          speed: Math.hypot(at(1), at(2)) / Math.hypot(run.vx, run.vy) - 1,
        },
      ];
    });
  });
  const rms = (of: (shot: (typeof shots)[number]) => number) =>
    Math.sqrt(shots.reduce((sum, shot) => sum + of(shot) ** 2, 0) / shots.length);
  const worst = (of: (shot: (typeof shots)[number]) => number) => Math.max(...shots.map((shot) => Math.abs(of(shot))));

  it("end within 0.012 board in the mean square and 0.1 board at worst", () => {
    expect(shots.length).toBeGreaterThan(250);
    expect(rms(({ boards }) => boards)).toBeLessThan(0.012);
    expect(worst(({ boards }) => boards)).toBeLessThan(0.1);
  });

  it("come in at the angle and speed, and turn where they do", () => {
    expect(worst(({ entryDeg }) => entryDeg)).toBeLessThan(0.02);
    expect(worst(({ speed }) => speed)).toBeLessThan(0.001);
    // Between two steps of 2 ft the ball may be a little further out.
    expect(worst(({ breakpoint }) => breakpoint)).toBeLessThan(0.07);
  });
});

describe("a plan", () => {
  afterAll(bringVectorKernel);

  it("is the same to the last digit with either kernel", () => {
    const question = asked("matched", "hybrid", "medium-41");
    const answers = [loaded(), plainKernel()].map((kernel) => {
      bringKernel(kernel);
      const wanted = runUnit({ kind: "wanted", question });
      return runUnit({ kind: "worlds", question, wanted, span: "session", from: 0, to: 2 });
    });
    expect(answers[0]).toEqual(answers[1]);
    expect(Math.max(...answers[0].finishes.flatMap(({ scores }) => scores))).toBeGreaterThan(0.2);
  });
});
