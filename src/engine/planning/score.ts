import type { Assumed } from "../assumptions.ts";
import type { BallJob } from "../ball/ball.ts";
import type { Line } from "../delivery/bowler.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { xToBoard } from "../lane/geometry.ts";
import { emptyRun } from "../motion/averaged.ts";
import type { Thrower } from "../motion/track.ts";
import { strikeMap } from "../pins/carry.ts";
import type { Finish } from "../surface/finish.ts";
import { type PlanGround, throwerOn, usualQuality } from "./ground.ts";
import { bestNearby, neighbourhood } from "./localChance.ts";
import { throwBall } from "./outcomeMap.ts";

/**
 * What makes a finish good depends on the ball's job: a strike ball wants the best chance with a line of its own at every stage, a control ball the best
 * chance of one line held throughout (least change over the lane's states), a spare or house ball the least hook.
 */
export type Objective = "chance" | "heldChance" | "leastHook";

export const OBJECTIVES: Readonly<Record<BallJob, Objective>> = {
  strike: "chance",
  control: "heldChance",
  spare: "leastHook",
  house: "leastHook",
};

/** Two finishes closer than this are as good as each other: two strikes in a hundred, or half a board of hook. */
export const AS_GOOD: Readonly<Record<Objective, number>> = { chance: 0.02, heldChance: 0.02, leastHook: 0.5 };

/** What the local score needs of a rating. */
export interface Rated {
  readonly finish: Finish;
  readonly found: FilmMap;
  readonly stages: readonly { readonly film: FilmMap; readonly line: Line | null }[];
  readonly heldLine: Line | null;
}

/**
 * The score of a finish under one set of assumptions, from the neighbourhood of the lines that the rating found: the bowler re-aims, the lane's wear is
 * scaled by the drawn removal.
 *
 * @returns the score, higher is better; 0 where there is no line.
 */
export function localScore(ground: PlanGround, rated: Rated, assumed: Assumed): number {
  const { question, searchSample, drawSample } = ground;
  const { limits, ball } = question;
  const objective = OBJECTIVES[ball.job];
  const usual = usualQuality(question);
  const carry = strikeMap(assumed, usual);
  const wear = assumed["wear.removal"] / ground.assumed["wear.removal"];
  const throwers = rated.stages.map(({ film }) => throwerOn(wearScaled(rated.found, film, wear), question, rated.finish, assumed));
  if (objective === "leastHook") return -mean(throwers.map(hookBoards));
  if (objective === "heldChance") {
    const line = rated.heldLine;
    if (line === null) return 0;
    const lanes = throwers.map((thrower) => ({ thrower, near: neighbourhood(thrower, usual, line, limits) }));
    return bestNearby(lanes, carry, limits, searchSample, drawSample);
  }
  return mean(
    throwers.map((thrower, stage) => {
      const { line } = rated.stages[stage];
      return line === null
        ? 0
        : bestNearby([{ thrower, near: neighbourhood(thrower, usual, line, limits) }], carry, limits, searchSample, drawSample);
    }),
  );
}

/** The worn film had the balls taken more or less of it, in the same places. */
function wearScaled(found: FilmMap, worn: FilmMap, factor: number): FilmMap {
  if (factor === 1 || worn === found) return worn;
  const um = new Float64Array(worn.um.length);
  for (let i = 0; i < um.length; i++) {
    const left = found.um[i] + factor * (worn.um[i] - found.um[i]);
    um[i] = Math.max(left, 0);
  }
  return { um, lengthFt: worn.lengthFt };
}

/** The line on which hook is measured: straight down the middle. */
export const STRAIGHT: Line = { laydownBoard: 20, launchAngleDeg: 0 };

/** How far a ball sent straight has been turned aside at the pins, boards: what a spare ball should do least of. */
function hookBoards(thrower: Thrower): number {
  const run = emptyRun();
  throwBall(thrower, STRAIGHT.laydownBoard, STRAIGHT.launchAngleDeg, run);
  return Math.abs(xToBoard(run.x) - STRAIGHT.laydownBoard);
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
