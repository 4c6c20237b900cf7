import type { Line } from "../delivery/bowler.ts";
import { filmOfPattern, handed } from "../lane/film.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { wearLaw, wornFilm } from "../lane/wear.ts";
import { filmPlayed, trackOf } from "../motion/track.ts";
import type { Finish } from "../surface/finish.ts";
import { type Ground, roughnessOf, throwerOn, usualQuality, volleyOn } from "./ground.ts";
import { type LineMap, lineMap } from "./lineMap.ts";
import type { Metric } from "./metric.ts";
import type { Limits } from "./question.ts";
import { groupsOf, linesWithin, NO_CHOICE, placeOfLine, playableLines, type SoftChoice, softChoice } from "./softLines.ts";
import { hookBoards } from "./straight.ts";

/** One moment of a session: the lane then, the chance on every line, and the near-best of them. */
export interface Stage {
  readonly film: FilmMap;
  readonly map: LineMap;
  readonly choice: SoftChoice;
}

/** The lane as found, and after 20 and 40 shots of the finish's own wear. */
export const STAGES = 3;
const SHOTS_A_STAGE = 20;
/** The bowler aims anew after so many of the shots already played. */
const SHOTS_BEFORE_AIMING_ANEW = 20;
/** Lines that lose more than this many pins to the best are hardly played, where pins are what is counted. Chosen. */
const NEARLY_PINS = 0.1;

/** A finish through a session of so many stages: on every lane the near-best lines are played, and it is worn by all of them. */
export function sessionOf(ground: Ground, finish: Finish, found: FilmMap, stages: number, metric: Metric): readonly Stage[] {
  const session: Stage[] = [];
  let film = found;
  for (let stage = 0; stage < stages; stage++) {
    const map = mapOf(ground, finish, film, metric);
    const choice = chosen(map, ground.question.limits, metric);
    session.push({ film, map, choice });
    if (stage + 1 < stages) film = wornBy(ground, finish, film, choice, SHOTS_A_STAGE);
  }
  return session;
}

/** The chance on every line with a finish on a film. */
export function mapOf(ground: Ground, finish: Finish, film: FilmMap, metric: Metric): LineMap {
  const { question, assumed, carry } = ground;
  const volley = volleyOn(film, question, finish, assumed);
  return lineMap(volley, usualQuality(question), carry, reachingLine(question), metric === "expectedPins");
}

/** A line that was named may lie outside what the bowler usually plays: the map reaches there too. */
function reachingLine({ limits, line }: Ground["question"]): Limits {
  if (line === null) return limits;
  const over = ([least, most]: readonly [number, number], value: number) => [Math.min(least, value), Math.max(most, value)] as const;
  return {
    ...limits,
    laydownBoard: over(limits.laydownBoard, line.laydownBoard),
    launchAngleDeg: over(limits.launchAngleDeg, line.launchAngleDeg),
  };
}

/** The near-best lines: of those at the pocket by their strikes; for who rarely strikes of all lines by their pins. */
export function chosen(map: LineMap, limits: Limits, metric: Metric): SoftChoice {
  if (metric === "expectedPins") return map.pins === null ? NO_CHOICE : softChoice(map, linesWithin(map, limits), map.pins, NEARLY_PINS);
  return softChoice(map, playableLines(map, limits), map.chance);
}

/** The film after so many shots over the near-best lines; unchanged where there is none. */
export function wornBy(ground: Ground, finish: Finish, film: FilmMap, choice: SoftChoice, shots: number): FilmMap {
  const groups = groupsOf(choice);
  if (groups.length === 0) return film;
  const { question, assumed } = ground;
  const thrower = throwerOn(film, question, finish, assumed);
  const law = wearLaw(question.ball.cover, roughnessOf(question, finish, assumed), assumed);
  return wornFilm(
    film,
    groups.map((group) => trackOf(thrower, group.line, group)),
    shots,
    law,
  ).film;
}

/** One line held through the whole session: the mean of the stages' chances on each line, and the near-best of them. */
export function heldThrough(session: readonly Stage[], limits: Limits): SoftChoice {
  const [first] = session;
  const mean = first.map.chance.map((_, at) => session.reduce((sum, { map }) => sum + map.chance[at], 0) / session.length);
  return softChoice(first.map, playableLines(first.map, limits), mean);
}

/** The film as the bowler finds it: the pattern, worn by the shots already played with today's finish. Right-hander's frame. */
export function filmFound(ground: Ground, metric: Metric = "strikeChance"): FilmMap {
  const { question } = ground;
  let film = handed(filmOfPattern(question.lane.pattern), question.bowler.hand);
  for (let left = question.lane.playedShots; left > 0; left -= SHOTS_BEFORE_AIMING_ANEW) {
    film = playedBefore(ground, film, metric, Math.min(left, SHOTS_BEFORE_AIMING_ANEW));
  }
  return film;
}

/** The film after so many shots with today's finish, on the line that was named or else on the near-best ones. */
function playedBefore(ground: Ground, film: FilmMap, metric: Metric, shots: number): FilmMap {
  const { question, assumed } = ground;
  const { finish, cover } = question.ball;
  if (question.line === null)
    return wornBy(ground, finish, film, chosen(mapOf(ground, finish, film, metric), question.limits, metric), shots);
  return filmPlayed(
    film,
    throwerOn(film, question, finish, assumed),
    question.line,
    shots,
    wearLaw(cover, roughnessOf(question, finish, assumed), assumed),
  );
}

/** The best line on a film with what is on the ball; null where there is none. */
export function lineNow(ground: Ground, film: FilmMap): Line | null {
  const { ball, limits } = ground.question;
  return chosen(mapOf(ground, ball.finish, film, "strikeChance"), limits, "strikeChance").best?.line ?? null;
}

/** The score of a finish through its session. */
export function scoreOf(ground: Ground, finish: Finish, session: readonly Stage[], metric: Metric): number {
  const { question, assumed } = ground;
  switch (metric) {
    case "strikeChance":
    case "expectedPins":
      return mean(session.map(({ choice }) => choice.score));
    case "leastChange":
      return heldThrough(session, question.limits).score;
    case "leastHook":
      return -mean(session.map(({ film }) => hookBoards(throwerOn(film, question, finish, assumed))));
  }
}

/** Chance on a line by the map; none where no ball of it comes near the pocket. */
export function chanceAt(map: LineMap, line: Line): number {
  const at = placeOfLine(map, line);
  return at === null ? 0 : map.chance[at];
}

/**
 * Chance of a line that is held through a session. It is never told as more than the session's own lines are worth, of which it is one: their worth is a mean over those that are nearly
 * the best, where this is one line's alone.
 */
export function heldChance(session: readonly Stage[], line: Line, metric: Metric): number {
  const held = mean(session.map(({ map }) => chanceAt(map, line)));
  return metric === "strikeChance" ? Math.min(held, mean(session.map(({ choice }) => choice.score))) : held;
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
