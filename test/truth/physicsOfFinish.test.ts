import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { bodyOf, effectiveMoment, inertiaRatio } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Bowler } from "#engine/delivery/bowler";
import { release } from "#engine/delivery/release";
import { filmOfPattern } from "#engine/lane/film";
import { emptyRun } from "#engine/motion/averaged";
import { averagedBall, frictionOnLane } from "#engine/motion/ground";
import { STYLES } from "#engine/planning/situations";
import { boardAtPins, entryDegOf, throwBall } from "#engine/planning/thrown";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { DEGREE } from "#engine/units";

/** What follows from the mechanics for any friction, and what the trade knows of surfaces. Provenance: computed, unless it says otherwise. */

const LADDER = ["500", "1000", "2000", "3000", "4000", "4000 + polish"];

function thrown(
  bowler: Bowler,
  cover: CoverId,
  finish: string,
  pattern: string,
  laydownBoard: number,
  launchAngleDeg: number,
  rollingResistance = 0.003,
) {
  const ball = { ...TYPICAL_BALL, cover, finish: parseFinish(finish) };
  const run = emptyRun();
  const film = filmOfPattern({ kind: "named", id: pattern });
  throwBall(
    { bowler, ball: averagedBall(ball, rollingResistance), friction: frictionOnLane(film, ball, effectiveRaUm(ball.finish), assume()) },
    laydownBoard,
    launchAngleDeg,
    run,
  );
  return run;
}

describe("the finish decides where the ball turns, not how far", () => {
  const ends: readonly (readonly [string, number, number, number, number])[] = [
    ["20 mph, 250 rpm, 35°", 20, 250, 35, 3.2],
    ["17.5 mph, 320 rpm, 45°", 17.5, 320, 45, 5.5],
    ["16.5 mph, 420 rpm, 45°", 16.5, 420, 45, 7.5],
  ];
  it.each(ends)(
    "with full roll, entry + launch angle is the delivery's own: %s",
    (_name, speedMph, revRateRpm, axisRotationDeg, aboutDeg) => {
      const bowler = { ...STYLES.matched, speedMph, revRateRpm, axisRotationDeg };
      const launch = 1.5;
      const start = release(bowler, { laydownBoard: 25, launchAngleDeg: launch });
      const body = bodyOf({ ...TYPICAL_BALL, cover: "solid", finish: parseFinish("500") });
      const kappa = inertiaRatio(body, effectiveMoment(body));
      const rolled = [
        start.vx - ((start.vx - body.radius * start.wy) * kappa) / (1 + kappa),
        start.vy - ((start.vy + body.radius * start.wx) * kappa) / (1 + kappa),
      ];
      const known = Math.atan2(-rolled[0], rolled[1]) / DEGREE;
      for (const finish of LADDER) {
        const run = thrown(bowler, "solid", finish, "light-38", 25, launch, 0);
        if (run.rollY < 0) continue;
        expect(entryDegOf(run)).toBeCloseTo(known, 3);
      }
      expect(Math.abs(known + launch - aboutDeg), "the round figures told in docs/model/finish-plan.md").toBeLessThan(0.35);
    },
  );

  it("a rougher surface never hits lighter on the same line (common practice: lower number hooks earlier)", () => {
    for (const cover of ["urethane", "solid", "hybrid", "pearl"] as const) {
      for (const pattern of ["light-38", "medium-41", "heavy-44"]) {
        const boards = LADDER.map((finish) => boardAtPins(thrown(STYLES.matched, cover, finish, pattern, 22, 1.5)));
        for (let i = 1; i < boards.length; i++)
          expect(boards[i], `${cover} ${pattern} ${LADDER[i]}`).toBeLessThanOrEqual(boards[i - 1] + 1e-9);
      }
    }
  });

  it("a rougher surface starts to hook earlier on the same line (common practice)", () => {
    const starts = LADDER.map((finish) => thrown(STYLES.matched, "hybrid", finish, "medium-41", 22, 1.5).hookY);
    for (let i = 1; i < starts.length; i++) expect(starts[i]).toBeGreaterThan(starts[i - 1]);
  });

  it("covers hook in the trade's order on one line: polyester, urethane, pearl, hybrid, solid (common practice)", () => {
    const boards = (["polyester", "urethane", "pearl", "hybrid", "solid"] as const).map((cover) =>
      boardAtPins(thrown(STYLES.matched, cover, "2000", "medium-41", 22, 1.5)),
    );
    for (let i = 1; i < boards.length; i++) expect(boards[i]).toBeGreaterThan(boards[i - 1]);
  });

  it("smoother is not always more angle: on heavy oil a fast bowler's polished ball arrives still slipping and enters flatter", () => {
    const dull = thrown(STYLES.speedDominant, "solid", "500", "heavy-44", 12, 0);
    const smooth = thrown(STYLES.speedDominant, "solid", "4000 + polish", "heavy-44", 12, 0);
    expect(Math.hypot(smooth.ux, smooth.uy)).toBeGreaterThan(0.15);
    expect(entryDegOf(smooth)).toBeLessThan(entryDegOf(dull));
  });

  it("more oil is later, more speed is later, more revs are higher (common practice)", () => {
    const board = (bowler: Bowler, pattern: string) => boardAtPins(thrown(bowler, "hybrid", "2000", pattern, 22, 1.8));
    expect(board(STYLES.matched, "heavy-44")).toBeLessThan(board(STYLES.matched, "light-38"));
    expect(board({ ...STYLES.matched, speedMph: 18.5 }, "medium-41")).toBeLessThan(board(STYLES.matched, "medium-41"));
    expect(board({ ...STYLES.matched, revRateRpm: 360 }, "medium-41")).toBeGreaterThan(board(STYLES.matched, "medium-41"));
  });
});
