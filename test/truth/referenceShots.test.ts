import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { xToBoard } from "#engine/lane/geometry";
import type { GivenFriction } from "#engine/lane/lane";
import { emptyRun, runAveraged } from "#engine/motion/averaged";
import { givenFriction } from "#engine/motion/ground";
import type { ShotSetup } from "#engine/motion/shot";
import { simulateShot } from "#engine/motion/simulate";
import { DEGREE, FOOT, INCH, POUND } from "#engine/units";

/**
 * Shots integrated to 1e-10 by a second program that shares no code with this one (Dormand–Prince 5, absolute tolerance 1e-10 on every component,
 * checked against 1e-12). Provenance: computed. Its conventions are those of docs/units-and-axes.md.
 */
interface Reference {
  readonly id: string;
  readonly description: string;
  readonly ball: {
    readonly mass: number;
    readonly R: number;
    readonly rg_in: readonly [number, number, number];
    readonly I: readonly number[];
  };
  readonly delivery: {
    readonly speed_mph: number;
    readonly rpm: number;
    readonly axis_rotation_deg: number;
    readonly axis_tilt_deg: number;
    readonly launch_deg_right: number;
    readonly board: number;
    readonly y0_ft: number;
  };
  readonly friction: {
    readonly type: "constant" | "two_zone";
    readonly mu: number;
    readonly muA: number;
    readonly muB: number;
    readonly yc: number;
    readonly w: number;
    readonly eps: number;
    readonly crr: number;
  };
  readonly initial: {
    readonly x: number;
    readonly y: number;
    readonly v: readonly [number, number];
    readonly omega: readonly [number, number, number];
    readonly q: readonly [number, number, number, number];
    readonly L: readonly [number, number, number];
  };
  readonly samples: readonly {
    readonly y_ft: number;
    readonly t: number;
    readonly x: number;
    readonly board: number;
    readonly v: readonly [number, number];
    readonly omega: readonly [number, number, number];
    readonly entry_angle_deg: number;
  }[];
  readonly averaged_model_59_5ft?: { readonly board: number; readonly entry_angle_deg: number };
  readonly spin_phase_mean_59_5ft?: { readonly board: number; readonly entry_angle_deg: number };
}

const references: readonly Reference[] = JSON.parse(readFileSync(join(import.meta.dirname, "data/reference-shots.json"), "utf8")).cases;

function frictionOf({ friction: f }: Reference): GivenFriction {
  return f.type === "constant"
    ? { kind: "constant", mu: f.mu }
    : { kind: "twoZone", oil: f.muA, dry: f.muB, changeAtFt: f.yc / FOOT, widthFt: f.w / FOOT };
}

function setupOf(reference: Reference): ShotSetup {
  const { ball, delivery, friction } = reference;
  return {
    seed: 1,
    bowler: {
      name: "",
      hand: "right",
      speedMph: delivery.speed_mph,
      revRateRpm: delivery.rpm,
      axisRotationDeg: delivery.axis_rotation_deg,
      axisTiltDeg: delivery.axis_tilt_deg,
      spread: TYPICAL_SPREAD,
    },
    ball: {
      ...TYPICAL_BALL,
      cover: "hybrid",
      finish: { number: 2000, polished: false },
      massLb: ball.mass / POUND,
      diameterIn: (2 * ball.R) / INCH,
      principalRgIn: ball.rg_in,
    },
    line: { laydownBoard: delivery.board, launchAngleDeg: delivery.launch_deg_right },
    surface: { kind: "given", friction: frictionOf(reference) },
    model: {
      motion: "full",
      slipRegularisationMps: friction.eps,
      rollingResistance: friction.crr,
      startFt: delivery.y0_ft,
      gravity: 9.80665,
      coreOrientation: reference.initial.q,
    },
    atFt: reference.samples.map((sample) => sample.y_ft),
  };
}

describe.each(references.map((reference) => [`${reference.id} ${reference.description}`, reference] as const))(
  "full model against a second program: %s",
  (_name, reference) => {
    const shot = simulateShot(setupOf(reference));

    it.each(reference.samples.map((sample) => [sample.y_ft, sample] as const))("at %d ft", (ft, known) => {
      const sample = shot.samples.find((one) => one.yFt === ft);
      expect(sample?.board).toBeCloseTo(known.board, 4);
      expect(Math.abs((sample?.entryAngleDeg ?? Number.NaN) - known.entry_angle_deg)).toBeLessThan(0.001);
      expect(Math.abs((sample?.tS ?? Number.NaN) - known.t)).toBeLessThan(1e-6);
      for (const [i, w] of known.omega.entries()) expect(Math.abs((sample?.omegaRadps[i] ?? Number.NaN) - w)).toBeLessThan(0.002);
    });

    it("accounts for its energy to 2e-6", () => {
      expect(Math.abs(shot.energy.residualJ) / shot.energy.startJ).toBeLessThan(2e-6);
    });
  },
);

describe("averaged model against the second program", () => {
  it.each(references.map((reference) => [reference.id, reference] as const))(
    "%s at 59.5 ft",
    (_id, { ball, friction, initial, samples, ...reference }) => {
      const { L, omega } = initial;
      const momentum2 = L[0] ** 2 + L[1] ** 2 + L[2] ** 2;
      const moment = momentum2 / (L[0] * omega[0] + L[1] * omega[1] + L[2] * omega[2]);
      const run = emptyRun();
      const start = { x: initial.x, vx: initial.v[0], vy: initial.v[1], wx: omega[0], wy: omega[1], wz: omega[2] };
      const averaged = {
        radius: ball.R,
        inertiaRatio: moment / (ball.mass * ball.R ** 2),
        rollingResistance: friction.crr,
        slipRegularisation: friction.eps,
        gravity: 9.80665,
      };
      runAveraged(averaged, givenFriction(frictionOf({ friction } as Reference)), start, initial.y, run);
      const atPins = samples.find((sample) => sample.y_ft === 59.5);
      // An asymmetric ball is compared with the mean over the core's phase, an isotropic one with the integration itself.
      const known = reference.spin_phase_mean_59_5ft ?? {
        board: atPins?.board ?? Number.NaN,
        entry_angle_deg: atPins?.entry_angle_deg ?? Number.NaN,
      };
      expect(Math.abs(xToBoard(run.x) - known.board)).toBeLessThan(0.017);
      expect(Math.abs(Math.atan2(-run.vx, run.vy) / DEGREE - known.entry_angle_deg)).toBeLessThan(0.05);
    },
  );
});
