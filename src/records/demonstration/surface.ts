import { assume } from "#engine/assumptions";
import { COVERS } from "#engine/ball/covers";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { NO_FINDINGS } from "#engine/rules/stops";
import type { BenchBall } from "#engine/surface/benchBall";
import { fadeLaw, gamesWithin, raAfter } from "#engine/surface/fade";
import { effectiveRaUm, type Finish } from "#engine/surface/finish";
import { planStages, type StagePlan } from "#engine/surface/stages";
import type { CustomerBall } from "./customers.ts";
import { DAY } from "./shopClock.ts";

/*
 * What the engine says of an invented ball: how its surface has faded, when it is due, and the stages of its work.
 */

const ASSUMED = assume();
/** A step on the ladder: when the track has gone so far, the finish is another one (see engine/surface/care). */
const ANOTHER_FINISH = 1.5;
/** Games after which oil is drawn out of a reactive ball; common practice. */
const EXTRACT_AT = 45;
/** Whoever is never driven by the surface comes once in a while to have the ball cleaned. */
const CLEAN_AFTER_DAYS = 400;

export function gamesOn(ball: CustomerBall, sinceMs: number, nowMs: number): number {
  return (ball.gamesPerWeek * Math.max(0, nowMs - sinceMs)) / (7 * DAY);
}

/** Roughness of the track or beside it, µm effective. */
export function roughnessAt(ball: CustomerBall, nowMs: number, where: "track" | "offTrack"): number {
  return raAfter(fadeLaw(ball.cover, ASSUMED), effectiveRaUm(ball.finish), gamesOn(ball, ball.finishedMs, nowMs), where);
}

/** What a tester shows for it, µm. */
export function readingUm(effectiveUm: number): number {
  return effectiveUm / ASSUMED["roughness.readingFactor"];
}

/** When the finish will have become another one, ms. */
export function dueMs(ball: CustomerBall): number {
  const start = effectiveRaUm(ball.finish);
  const games = gamesWithin(fadeLaw(ball.cover, ASSUMED), start, start / ANOTHER_FINISH, start * ANOTHER_FINISH);
  const days = games === null ? CLEAN_AFTER_DAYS : Math.min(CLEAN_AFTER_DAYS, (7 * games) / ball.gamesPerWeek);
  return ball.finishedMs + days * DAY;
}

export function wantsExtraction(ball: CustomerBall, nowMs: number): boolean {
  return COVERS[ball.cover].reactive && gamesOn(ball, ball.extractedMs, nowMs) >= EXTRACT_AT;
}

export function stagesFor(ball: CustomerBall, wanted: Finish, nowMs: number): StagePlan {
  const bench: BenchBall = {
    cover: ball.cover,
    hardnessD: null,
    diameterIn: TYPICAL_BALL.diameterIn,
    finish: ball.finish,
    history: [],
    gamesSince: gamesOn(ball, ball.finishedMs, nowMs),
    raMicroinch: null,
    compared: null,
    trackWear: "none",
    plug: "none",
    oil: wantsExtraction(ball, nowMs) ? "soaked" : "clean",
  };
  return planStages(bench, wanted, NO_FINDINGS, undefined, ASSUMED);
}
