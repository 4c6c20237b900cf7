import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { assume } from "#engine/assumptions";
import { bodyOf, effectiveMoment, inertiaRatio } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { contactOf, filmMet, frictionCoefficient, laneFriction, TABLE_STEP_UM } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { CELL_X, CELL_Y, COLUMNS, FIRST_X, ROWS } from "#engine/lane/filmMap";
import { PINS_PLANE } from "#engine/lane/geometry";
import { emptyRun, runAveraged } from "#engine/motion/averaged";
import { type FullMechanics, fullRunTo, fullStart } from "#engine/motion/full";
import { STYLES } from "#engine/planning/situations";
import { STANDARD_GRAVITY } from "#engine/units";
import { turnBetween, unit } from "#engine/vector";
import { median, type Row } from "./rows.ts";

const ROUNDS = 5;
const AVERAGED_SHOTS = 20_000;
const FULL_SHOTS = 2_000;

/** Both models on medium-41 against the same algorithms in C -O2, in alternating rounds of one run. */
export function motionRows(): readonly Row[] {
  const shot = setup();
  const averaged = () => timed(() => shot.averaged(AVERAGED_SHOTS));
  const full = () => timed(() => shot.full(FULL_SHOTS));
  averaged();
  full();
  const c = compiledReference(shot.input);
  const rows: Row[] = [];
  const pairs = Array.from({ length: ROUNDS }, () => ({
    a: averaged(),
    ca: c?.("averaged", AVERAGED_SHOTS),
    f: full(),
    cf: c?.("full", FULL_SHOTS),
  }));
  const perSecond = (count: number, seconds: number) => `${Math.round(count / seconds).toLocaleString("en")} shots/s`;
  const [a, f] = [median(pairs.map((pair) => pair.a.seconds)), median(pairs.map((pair) => pair.f.seconds))];
  rows.push({
    what: "averaged model",
    value: perSecond(AVERAGED_SHOTS, a),
    ratio: c ? ratio(pairs.map((pair) => (pair.ca?.seconds ?? 0) / pair.a.seconds)) : NO_COMPILER,
  });
  rows.push({
    what: "full model (4 ms, ε = 0.02 m/s)",
    value: perSecond(FULL_SHOTS, f),
    ratio: c ? ratio(pairs.map((pair) => (pair.cf?.seconds ?? 0) / pair.f.seconds)) : NO_COMPILER,
  });
  rows.push({
    what: "cost of the full model over the averaged, at the errors of docs/validation.md",
    value: `${(f / FULL_SHOTS / (a / AVERAGED_SHOTS)).toFixed(1)} ×`,
    ratio: "",
  });
  for (const { a: ours, ca, f: fours, cf } of pairs.slice(0, 1)) {
    if (ca && Math.abs(ca.sum - ours.sum) > 1e-6 * AVERAGED_SHOTS) throw new Error(`averaged model in C says ${ca.sum}, ours ${ours.sum}`);
    if (cf && Math.abs(cf.sum - fours.sum) > 1e-6 * FULL_SHOTS) throw new Error(`full model in C says ${cf.sum}, ours ${fours.sum}`);
  }
  return rows;
}

const NO_COMPILER = "no C compiler on this machine, so no ratio";

function ratio(values: readonly number[]): string {
  return `${median(values).toFixed(2)} × the speed of the same algorithm in C -O2`;
}

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
  const met = filmMet(filmOfPattern({ kind: "named", id: "medium-41" }), "hybrid", a);
  const friction = laneFriction(met, contact);
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
  return {
    input,
    averaged(count: number) {
      let sum = 0;
      for (let n = 0; n < count; n++) {
        runAveraged(averagedBall, friction, { ...start, x: start.x + 1e-4 * (n % 100) }, 0, run);
        sum += run.x + 1e-6 * (run.vx + run.vy + run.t + run.hookY + run.breakX + run.breakY);
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
function compiledReference(input: Float64Array): ((model: "averaged" | "full", count: number) => { seconds: number; sum: number }) | null {
  const compiler = ["cc", "gcc", "clang"].find((name) => spawnSync(name, ["--version"]).status === 0);
  if (!compiler) return null;
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const [program, data] = [join(folder, "reference"), join(folder, "input")];
  execFileSync(compiler, ["-O2", join(import.meta.dirname, "reference.c"), "-o", program, "-lm"]);
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
