import type { Line } from "../delivery/bowler.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { type Finish, finishText, sameFinish } from "../surface/finish.ts";
import type { World } from "../worlds/ensemble.ts";
import { type Ground, groundIn, throwerOn } from "./ground.ts";
import type { Metric } from "./metric.ts";
import type { PlanQuestion } from "./question.ts";
import { meanShot } from "./rating.ts";
import { filmFound, heldChance, STAGES, scoreOf, sessionOf } from "./session.ts";
import { todaysLine } from "./todaysLine.ts";
import { fitOf } from "./trial.ts";

/** What one finish comes to in some worlds, in their order. */
export interface FinishInWorlds {
  readonly finish: string;
  /** In the metric's unit, higher is better. */
  readonly scores: readonly number[];
  /** Strike chance over the session with the line held that is played today; null where nobody knows what is on the ball today, or where it is not asked. */
  readonly onTodaysLine: readonly number[] | null;
}

/** Some of the ensemble's worlds, every finish in each. */
export interface WorldBlock {
  /** Of the first of them, in the order in which worlds are taken. */
  readonly from: number;
  /** Which worlds, by their ids. */
  readonly ids: readonly number[];
  /** Their shares of the ensemble. */
  readonly weights: readonly number[];
  /** Their shares where nothing is believed but the priors. */
  readonly priorWeights: readonly number[];
  /** On the lane as found only, or through the session. */
  readonly span: "fresh" | "session";
  readonly finishes: readonly FinishInWorlds[];
  /** Logarithm of how well each world says what was seen in the question's trial; 0 without one. */
  readonly fits: readonly number[];
  /** What would be seen on the line that is played today, world by world; null where nobody knows one. */
  readonly seen: SeenInWorlds | null;
}

/** Where the mean shot arrives with today's finish, and with the dullest and the smoothest of all, boards; and how much speed it loses. */
export interface SeenInWorlds {
  readonly todaysBoard: readonly number[];
  readonly dullBoard: readonly number[];
  readonly smoothBoard: readonly number[];
  readonly speedLostMph: readonly number[];
}

/** What a block is computed from. */
export interface ScoresAsked {
  /** From dull to smooth: the candidates, and today's. */
  readonly finishes: readonly Finish[];
  /** Null where nobody knows it. */
  readonly today: Finish | null;
  readonly todaysLine: Line | null;
  readonly metric: Metric;
  readonly span: WorldBlock["span"];
}

export function scoresIn(worlds: readonly World[], from: number, question: PlanQuestion, asked: ScoresAsked): WorldBlock {
  const { finishes, today, metric, span } = asked;
  const grounds = worlds.map((world) => groundIn(world, question));
  const founds = grounds.map((ground) => filmFound(ground, metric));
  const rows = grounds.map((ground, i) => scoresInWorld(ground, founds[i], asked));
  const hasToday = today !== null && metric !== "leastHook" && metric !== "expectedPins";
  return {
    from,
    ids: worlds.map(({ id }) => id),
    weights: worlds.map(({ weight }) => weight),
    priorWeights: worlds.map(({ priorWeight }) => priorWeight),
    span,
    finishes: finishes.map((finish, i) => ({
      finish: finishText(finish),
      scores: rows.map((row) => row[i].score),
      onTodaysLine: hasToday ? rows.map((row) => row[i].onTodaysLine) : null,
    })),
    fits: grounds.map(fitOf),
    seen: hasToday && span === "session" ? seenIn(grounds, founds, asked) : null,
  };
}

function seenIn(grounds: readonly Ground[], founds: readonly FilmMap[], { finishes, today, todaysLine }: ScoresAsked): SeenInWorlds | null {
  if (today === null || todaysLine === null) return null;
  const shots = grounds.map(({ question, assumed }, i) => {
    const on = (finish: Finish) => meanShot(throwerOn(founds[i], question, finish, assumed), todaysLine);
    return { today: on(today), dull: on(finishes[0]), smooth: on(finishes[finishes.length - 1]), launchMph: question.bowler.speedMph };
  });
  return {
    todaysBoard: shots.map((shot) => shot.today.boardAtPins),
    dullBoard: shots.map((shot) => shot.dull.boardAtPins),
    smoothBoard: shots.map((shot) => shot.smooth.boardAtPins),
    speedLostMph: shots.map((shot) => shot.launchMph - shot.today.speedAtPinsMph),
  };
}

interface InOneWorld {
  readonly score: number;
  readonly onTodaysLine: number;
}

function scoresInWorld(ground: Ground, found: FilmMap, { finishes, today, metric, span }: ScoresAsked): readonly InOneWorld[] {
  const { question } = ground;
  const stages = span === "fresh" ? 1 : STAGES;
  const sessions = finishes.map((finish) => sessionOf(ground, finish, found, stages, metric));
  const at = finishes.findIndex((finish) => today !== null && sameFinish(finish, today));
  const line = at < 0 ? null : todaysLine(question, sessions[at][0]);
  return finishes.map((finish, i) => ({
    score: scoreOf(ground, finish, sessions[i], metric),
    onTodaysLine: line === null ? 0 : heldChance(sessions[i], line, metric),
  }));
}
