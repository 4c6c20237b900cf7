import type { CoverId } from "#engine/ball/ball";
import { COVERS } from "#engine/ball/covers";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { PATTERN_IDS } from "#engine/lane/patterns";
import { type PlanQuestion, USUAL_LIMITS } from "#engine/planning/question";
import { deriveSeed, uniformSource } from "#engine/random";

const COVERS_ASKED: readonly CoverId[] = ["solid", "hybrid", "pearl", "urethane"];
/** Finishes beside one another, so that they are close and a fault of the fast way would show. */
const CANDIDATES = 3;

/** An invented bowler with a ball on a pattern, anywhere that bowlers, balls and patterns are. */
export function randomQuestion(seed: number): PlanQuestion {
  const uniform = uniformSource(deriveSeed(seed, 0));
  const between = (from: number, to: number) => from + (to - from) * uniform();
  const oneOf = <T>(all: readonly T[]): T => all[Math.floor(uniform() * all.length)];
  const cover = oneOf(COVERS_ASKED);
  const { usual } = COVERS[cover];
  const first = Math.floor(uniform() * (usual.length - CANDIDATES + 1));
  const candidates = usual.slice(first, first + CANDIDATES);
  return {
    seed: 1,
    bowler: {
      name: "Invented",
      hand: "right",
      speedMph: between(15, 20),
      revRateRpm: between(200, 450),
      axisRotationDeg: between(20, 70),
      axisTiltDeg: between(5, 20),
      spread: {
        launchAngleDeg: between(0.2, 0.6),
        laydownBoards: between(0.4, 1.2),
        speedMph: between(0.2, 0.6),
        revRateRpm: between(8, 25),
        axisRotationDeg: between(2, 6),
      },
    },
    ball: { ...TYPICAL_BALL, cover, differentialIn: between(0.02, 0.055), finish: oneOf(candidates) },
    lane: { pattern: { kind: "named", id: oneOf(PATTERN_IDS) }, playedShots: 0 },
    line: null,
    limits: USUAL_LIMITS,
    candidates,
    outsideRangeReason: null,
    assumptions: {},
    trial: [],
    readings: [],
    house: null,
  };
}
