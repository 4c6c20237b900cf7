import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { assume } from "#engine/assumptions";
import { bodyOf, effectiveMoment, inertiaRatio } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { contactOf, filmFriction, filmMet, frictionCoefficient, TABLE_STEP_UM, tabulated } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { CELL_X, CELL_Y, COLUMNS, FIRST_X, ROWS } from "#engine/lane/filmMap";
import { PINS_PLANE } from "#engine/lane/geometry";
import { emptyRun, runAveraged, SCORED_STEP } from "#engine/motion/averaged";
import { type FullMechanics, fullRunTo, fullStart } from "#engine/motion/full";
import { scoredShots } from "#engine/motion/manyShots";
import { plainKernel } from "#engine/motion/plainKernel";
import { MOST_SHOTS, type ShotKernel } from "#engine/motion/shotKernel";
import { STYLES } from "#engine/planning/situations";
import { STANDARD_GRAVITY } from "#engine/units";
import { turnBetween, unit } from "#engine/vector";
import { vectorKernel } from "#tasks/kernel/vectorKernel";
import { median, type Row } from "./rows.ts";

const ROUNDS = 5;
/** Shots handed to a kernel at once. */
const BATCH = 1000;
const AVERAGED_SHOTS = 20_000;
const MANY_SHOTS = 200_000;
const FULL_SHOTS = 2_000;

/** Both models on medium-41, and the kernels of very many shots, against the same algorithms in C, in alternating rounds of one run. */
export function motionRows(): readonly Row[] {
  const shot = setup();
  const c = compiledReference(shot.input);
  const vector = vectorKernel();
  const row = (what: string, model: CModel, count: number, ours: (count: number) => number): Row => {
    ours(count);
    const rounds = Array.from({ length: ROUNDS }, () => ({ ours: timed(() => ours(count)), c: c?.(model, count) }));
    const [first] = rounds;
    if (first.c && Math.abs(first.c.sum - first.ours.sum) > TOLERANCE[model] * count)
      throw new Error(`${what}: ${first.ours.sum}, and in C ${first.c.sum}`);
    return {
      what,
      value: `${Math.round(count / median(rounds.map((round) => round.ours.seconds))).toLocaleString("en")} shots/s`,
      ratio: c && {
        rounds: rounds.map((round) => (round.c?.seconds ?? 0) / round.ours.seconds),
        of: "the speed of the same algorithm in C -O3 -march=native",
        better: "higher",
      },
    };
  };
  return [
    row("averaged model, steps of half a foot", "averaged", AVERAGED_SHOTS, shot.averaged),
    row("averaged model, steps of 2 ft", "scored", AVERAGED_SHOTS, shot.scored),
    ...(vector === null ? [] : [row("very many shots, vector kernel", "scored", MANY_SHOTS, shot.many(vector))]),
    row("very many shots, plain kernel", "scored", AVERAGED_SHOTS, shot.many(plainKernel())),
    row("full model (4 ms, ε = 0.02 m/s)", "full", FULL_SHOTS, shot.full),
  ];
}

type CModel = "averaged" | "scored" | "full";
/** By how much a shot's checksum may differ, m: kernels take single precision and friction from a grid. */
const TOLERANCE: Readonly<Record<CModel, number>> = { averaged: 1e-6, scored: 2e-3, full: 1e-6 };

function timed(work: () => number): { seconds: number; sum: number } {
  const start = performance.now();
  const sum = work();
  return { seconds: (performance.now() - start) / 1000, sum };
}

function setup() {
  const a = assume();
  const ball = { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false }, intermediateDifferentialIn: 0.01 } as const;
  const body = bodyOf(ball);
  const contact = contactOf("hybrid", 0.45, a);
  const film = filmOfPattern({ kind: "named", id: "medium-41" });
  const met = filmMet(film, "hybrid", a);
  const friction = filmFriction(met, contact);
  const start = release(STYLES.matched, { laydownBoard: 19, launchAngleDeg: 1.7 });
  const kappa = inertiaRatio(body, effectiveMoment(body));
  const mechanics: FullMechanics = { body, rollingResistance: 0.003, slipRegularisation: 0.02, gravity: STANDARD_GRAVITY };
  const orientation = turnBetween(body.axisInBody, unit([start.wx, start.wy, start.wz]));
  const state = fullStart(mechanics, start, 0, orientation);
  const averagedBall = {
    radius: body.radius,
    inertiaRatio: kappa,
    rollingResistance: 0.003,
    slipRegularisation: 0.02,
    gravity: STANDARD_GRAVITY,
  };
  const thickest = met.reduce((most, h) => Math.max(most, h), 0);
  const law = Float64Array.from({ length: Math.ceil(thickest / TABLE_STEP_UM) + 3 }, (_, i) =>
    frictionCoefficient(contact, i * TABLE_STEP_UM),
  );
  const input = Float64Array.from([
    COLUMNS,
    ROWS,
    CELL_X,
    CELL_Y,
    FIRST_X,
    TABLE_STEP_UM,
    law.length,
    ...law,
    ...met,
    body.mass,
    body.radius,
    ...body.moments,
    kappa,
    0.003,
    0.02,
    STANDARD_GRAVITY,
    start.x,
    start.vx,
    start.vy,
    start.wx,
    start.wy,
    start.wz,
    PINS_PLANE,
    ...orientation,
    state[5],
    state[6],
    state[7],
  ]);
  const run = emptyRun();
  const averagedSum = (count: number, longest?: number) => {
    let sum = 0;
    for (let n = 0; n < count; n++) {
      runAveraged(averagedBall, friction, { ...start, x: start.x + 1e-4 * (n % 100) }, 0, run, null, PINS_PLANE, longest);
      sum += run.x + 1e-6 * (run.vx + run.vy + run.t + run.hookY + run.breakX + run.breakY);
    }
    return sum;
  };
  return {
    input,
    averaged: (count: number) => averagedSum(count),
    scored: (count: number) => averagedSum(count, SCORED_STEP),
    many: (kernel: ShotKernel) => (count: number) => {
      tabulated(met, contact, STANDARD_GRAVITY, kernel.grip);
      const { shots } = kernel;
      let sum = 0;
      for (let from = 0; from < count; from += BATCH) {
        for (let shot = 0; shot < BATCH; shot++) {
          shots[shot] = start.x + 1e-4 * ((from + shot) % 100);
          shots[MOST_SHOTS + shot] = start.vx;
          shots[2 * MOST_SHOTS + shot] = start.vy;
          shots[3 * MOST_SHOTS + shot] = start.vx - body.radius * start.wy;
          shots[4 * MOST_SHOTS + shot] = start.vy + body.radius * start.wx;
        }
        kernel.run(BATCH, scoredShots(averagedBall));
        for (let shot = 0; shot < BATCH; shot++) sum += shots[shot];
      }
      return sum;
    },
    full(count: number) {
      let sum = 0;
      const shot = new Float64Array(state.length);
      for (let n = 0; n < count; n++) {
        shot.set(state);
        shot[1] += 1e-4 * (n % 100);
        fullRunTo(mechanics, friction, shot, PINS_PLANE, 12);
        sum += shot[1];
      }
      return sum;
    },
  };
}

/** Compiles bench/reference.c where there is a compiler; null where there is none. */
function compiledReference(input: Float64Array): ((model: CModel, count: number) => { seconds: number; sum: number }) | null {
  const compiler = ["cc", "gcc", "clang"].find((name) => spawnSync(name, ["--version"]).status === 0);
  if (!compiler) return null;
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const [program, data] = [join(folder, "reference"), join(folder, "input")];
  execFileSync(compiler, ["-O3", "-march=native", join(import.meta.dirname, "reference.c"), "-o", program, "-lm"]);
  writeFileSync(data, new Uint8Array(input.buffer));
  process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
  return (model, count) => {
    const [seconds, sum] = execFileSync(program, [data, model, String(count)], { encoding: "utf8" })
      .trim()
      .split(" ")
      .map(Number);
    return { seconds, sum };
  };
}
