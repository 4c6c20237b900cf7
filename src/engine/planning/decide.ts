import { ASSUMPTIONS, type AssumptionId } from "../assumptions.ts";
import { isKnown, knownCover } from "../ball/ball.ts";
import type { Hand, Line } from "../delivery/bowler.ts";
import type { Message } from "../message.ts";
import { leaveSeen } from "../pins/carry.ts";
import { leaveText } from "../pins/leave.ts";
import { cautionsFor } from "../rules/cautions.ts";
import { finishText, sameFinish } from "../surface/finish.ts";
import { effectiveNumber, effectiveWorlds } from "../worlds/effectiveNumber.ts";
import { ensemble } from "../worlds/ensemble.ts";
import { weightedMean } from "../worlds/weightedMean.ts";
import { candidatesOf } from "./candidates.ts";
import { band, type Comparison, compare, lowerLimit, type Standing, standingOf, type Worlds, worldsOf } from "./comparison.ts";
import { assumedIn, type Ground } from "./ground.ts";
import { fadeOf, keepsGames } from "./keepsGames.ts";
import { everyFinishAlike, measureNext, messagesFor, sensible } from "./messages.ts";
import type { Metric } from "./metric.ts";
import type { AssumptionUse, Candidate, FinishPlan, Interval, OnTodaysLine, Pick, PinsLeft } from "./plan.ts";
import { assumptionsOfBall } from "./planAssumptions.ts";
import type { PlanQuestion } from "./question.ts";
import type { FinishRating } from "./rating.ts";
import { reasonsFor } from "./reasons.ts";
import { ruleVerdicts } from "./ruleVerdicts.ts";
import { trialMeans } from "./trial.ts";
import type { WorldBlock } from "./worldScores.ts";
import { isTaughtInWorlds, worldsAsked } from "./worldsAsked.ts";

const SURE_FROM = 0.9;
const LIKELY_FROM = 0.7;

/** What a plan is decided on: what stays the same as more is known. */
export interface Decided {
  readonly metric: Metric;
  readonly todaysLine: Line | null;
}

/**
 * The plan from what was rated and computed so far: candidates side by side, what cannot be told apart, the pick, and why. Called again as more is known;
 * without worlds the pick is `unsure` and the intervals are single points.
 */
export function decide(
  ground: Ground,
  { metric, todaysLine }: Decided,
  ratings: readonly FinishRating[],
  blocks: readonly WorldBlock[],
): FinishPlan {
  const { question } = ground;
  const seen = worldsOf(blocks);
  const isUnsaid = isUnsaidBy(seen, question);
  // What no world says cannot tell worlds apart: the few that come nearest would only look sure.
  const worlds = isUnsaid ? worldsOf(blocks.map(unweighed)) : seen;
  const ratingOf = (finish: FinishRating["finish"]) => ratings.find((rating) => sameFinish(rating.finish, finish));
  const standings = candidatesOf(question).flatMap((finish) => {
    const rating = ratingOf(finish);
    return rating ? [standingOf(rating, worlds)] : [];
  });
  // Nothing is held against a finish that nobody knows to be there.
  const isThere = isKnown(question.ball, "finish");
  const today = isThere ? (ratingOf(question.ball.finish) ?? null) : null;
  const comparison = compare(standings, worlds, metric, isThere ? question.ball.finish : null);
  const laws = fadeOf(knownCover(question.ball), ground.assumed);
  const candidates = standings.map((standing) => ({
    ...candidateOf(ground, metric, standing, today, worlds),
    keepsGames: keepsGames(standing.rating.effectiveRaUm, laws),
  }));
  const pick = pickOf(comparison, Math.min(mostLearned(question), isUnsaid ? MOST_UNSAID : isGuessed(question) ? MOST_GUESSED : 1));
  const found = comparison.standings[comparison.pick];
  const reasons = pick ? reasonsFor(comparison, candidates, today && standingOf(today, worlds), today && todaysLine) : [];
  return {
    metric,
    ensemble: ensemble().digest,
    worlds: worlds.weights.length,
    today: isThere ? { finish: finishText(question.ball.finish), line: todaysLine } : { finish: null, line: null },
    candidates,
    pick,
    messages: [
      ...(isUnsaid ? [{ id: question.trial.length > 0 ? "message.trialUnsaid" : "message.readingsUnsaid", params: {} } as const] : []),
      ...messagesFor(ground, comparison, pick),
      ...measureNext(comparison, worlds),
    ],
    reasons,
    rules: ruleVerdicts(ground, comparison, candidates, pick !== null),
    assumptions: assumptionsUsed(ground),
    cautions: cautionsFor({
      cover: knownCover(question.ball),
      number: found.finish.number,
      polished: found.finish.polished,
      extracts: false,
      readingMicroinch: question.ball.raMicroinch,
    }).map((id): Message => ({ id: `caution.${id}`, params: {} })),
  };
}

function candidateOf(
  ground: Ground,
  metric: Metric,
  standing: Standing,
  today: FinishRating | null,
  worlds: Worlds,
): Omit<Candidate, "keepsGames"> {
  const { rating } = standing;
  const countsStrikes = metric === "strikeChance" || metric === "leastChange";
  const scored: Interval = { value: standing.score, ...band(standing.drawn, standing.score, worlds.weights) };
  return {
    finish: finishText(rating.finish),
    effectiveRaUm: rating.effectiveRaUm,
    line: rating.line,
    boardAtPins: rating.shot?.boardAtPins ?? null,
    entryAngleDeg: rating.shot?.entryAngleDeg ?? null,
    hookStartFt: rating.shot?.hookStartFt ?? null,
    rollStartFt: rating.shot?.rollStartFt ?? null,
    slipAtPinsMps: rating.shot?.slipAtPinsMps ?? null,
    speedAtPinsMph: rating.shot?.speedAtPinsMph ?? null,
    chance: countsStrikes && rating.line !== null ? scored : null,
    expectedPins: metric === "expectedPins" && rating.line !== null ? scored : null,
    missLoss: rating.missLoss,
    pins: pinsLeft(rating, ground.question.bowler.hand),
    onTodaysLine: today && onTodaysLine(standing, today, countsStrikes ? worlds : null),
  };
}

/** Against today's finish on the line that is played today; null where nobody knows one. */
function onTodaysLine({ rating, onTodaysLine }: Standing, today: FinishRating, worlds: Worlds | null): OnTodaysLine | null {
  const [here, before] = [rating.onTodaysLine, today.onTodaysLine];
  if (here === null || before === null) return null;
  const hooks = here.shot.hookStartFt !== null && before.shot.hookStartFt !== null;
  const chance = worlds && (onTodaysLine.length > 0 ? weightedMean(onTodaysLine, worlds.weights) : here.chance);
  return {
    boardAtPins: here.shot.boardAtPins,
    boardChange: here.shot.boardAtPins - before.shot.boardAtPins,
    entryAngleDeg: here.shot.entryAngleDeg,
    hookStartChangeFt: hooks ? (here.shot.hookStartFt ?? 0) - (before.shot.hookStartFt ?? 0) : null,
    chance: chance === null ? null : { value: chance, ...band(onTodaysLine, chance, worlds?.weights) },
    move: here.move,
  };
}

function pinsLeft({ carry }: FinishRating, hand: Hand): PinsLeft | null {
  if (carry === null) return null;
  const { strike, pinsDown, other } = carry;
  return { strike, pinsDown, leaves: carry.leaves.map(({ leave, share }) => ({ leave: leaveText(leaveSeen(leave, hand)), share })), other };
}

/** Nobody is told that a pick is sure where what it rests on was guessed, however alike the worlds are: more than this is not said. Chosen. */
const MOST_GUESSED = 0.8;

/** Whether delivery, cover or finish came from a word or from nobody. */
function isGuessed({ bowler, ball }: PlanQuestion): boolean {
  return bowler.known !== undefined || !isKnown(ball, "cover") || !isKnown(ball, "finish");
}

/** What few worlds say that all agree: the shots of a house may have left three of them. */
function mostLearned({ house }: PlanQuestion): number {
  return isTaughtInWorlds(house) ? lowerLimit(1, effectiveWorlds(house.inWorlds.worlds)) : 1;
}

/** What fewer worlds than this say, or what the best of them misses by more than chance does once in a hundred. Chosen. */
const FEW_WORLDS = 10;
const Z_99 = 2.326;
/** Either what was seen or the worlds are then wrong, and no more than this is said. Chosen. */
const MOST_UNSAID = 0.5;

/** Whether shots were seen, or balls read, that the worlds do not say. */
function isUnsaidBy({ blocks, weights }: Worlds, question: PlanQuestion): boolean {
  const figures = trialMeans(question).length + question.readings.length;
  if (figures === 0 || weights.length === 0) return false;
  return effectiveNumber(weights) < FEW_WORLDS || Math.max(...blocks.flatMap(({ fits }) => fits)) < -0.5 * farthest(figures);
}

/** A block as it is without what was seen and read. */
function unweighed(block: WorldBlock): WorldBlock {
  return { ...block, fits: block.fits.map(() => 0) };
}

/** χ² that one in a hundred exceeds (Wilson and Hilferty 1931). */
function farthest(figures: number): number {
  const part = 2 / (9 * figures);
  return figures * (1 - part + Z_99 * Math.sqrt(part)) ** 3;
}

function pickOf(comparison: Comparison, mostSaid: number): Pick | null {
  if (comparison.standings.length < 2 || !sensible(comparison) || everyFinishAlike(comparison)) return null;
  const { standings, plateau, pick, cliff } = comparison;
  const sureShare = Math.min(mostSaid, comparison.sureShare);
  return {
    finish: finishText(standings[pick].finish),
    plateau: standings.slice(plateau[0], plateau[1] + 1).map((standing) => finishText(standing.finish)),
    cliff,
    sure: sureShare >= SURE_FROM ? "sure" : sureShare >= LIKELY_FROM ? "likely" : "unsure",
    sureShare,
  };
}

/** The assumptions that the plan rests on, with the values of the middle world and the stretch that nine worlds of ten lie in. */
function assumptionsUsed({ question, assumed }: Ground): readonly AssumptionUse[] {
  const measuredFilm: readonly AssumptionId[] = question.lane.pattern.kind === "filmPoints" ? ["film.unit"] : [];
  const learned = question.house?.ids ?? [];
  const { own: worlds } = worldsAsked(question);
  const inWorlds = worlds.map((world) => assumedIn(world, question));
  const weights = worlds.map(({ weight }) => weight);
  const ids = [...new Set([...assumptionsOfBall(question.ball), ...measuredFilm, ...learned])];
  return ids.map((id) => {
    const { unit, mark, source } = ASSUMPTIONS[id];
    const drawn = inWorlds.map((one) => one[id]);
    const isDrawn = drawn.some((one) => one !== drawn[0]);
    const { low, high } = isDrawn ? band(drawn, assumed[id], weights) : ASSUMPTIONS[id];
    return { id, value: assumed[id], low, high, unit, mark: learned.includes(id) ? "learned" : mark, source };
  });
}
