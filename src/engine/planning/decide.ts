import { ASSUMPTIONS, type AssumptionId } from "../assumptions.ts";
import { type Ball, coversOf, isKnown, knownCover } from "../ball/ball.ts";
import type { Hand, Line } from "../delivery/bowler.ts";
import type { Message } from "../message.ts";
import { leaveSeen } from "../pins/carry.ts";
import { leaveText } from "../pins/leave.ts";
import { cautionsFor } from "../rules/cautions.ts";
import { limitsOf } from "../rules/limits.ts";
import { NOTHING_MEASURED } from "../rules/measuredBall.ts";
import { finishText, sameFinish } from "../surface/finish.ts";
import { effectiveNumber } from "../worlds/effectiveNumber.ts";
import { ensemble } from "../worlds/ensemble.ts";
import { candidatesOf } from "./candidates.ts";
import { band, type Comparison, compare, type Standing, standingOf, type Worlds, weightedMean, worldsOf } from "./comparison.ts";
import { assumedIn, type Ground } from "./ground.ts";
import { fadeOf, keepsGames } from "./keepsGames.ts";
import { CLOSE, type Metric, RARELY_STRIKES } from "./metric.ts";
import { noLine } from "./noLine.ts";
import type { AssumptionUse, Candidate, FinishPlan, Interval, OnTodaysLine, Pick, PinsLeft } from "./plan.ts";
import { assumptionsOfBall } from "./planAssumptions.ts";
import type { PlanQuestion } from "./question.ts";
import type { FinishRating } from "./rating.ts";
import { reasonsFor } from "./reasons.ts";
import { ruleVerdicts } from "./ruleVerdicts.ts";
import type { WorldBlock } from "./worldScores.ts";
import { isTaughtInWorlds, worldsAsked } from "./worldsAsked.ts";
import { worthMeasuring } from "./worthMeasuring.ts";

const SURE_FROM = 0.9;
const LIKELY_FROM = 0.7;
const MEASURES_SAID = 2;
/** A ball that rolls before here has given its turn away in the front of the lane: well short of where any pattern ends. Chosen. */
const EARLY_FT = 30;

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
  const worlds = worldsOf(blocks);
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
  const isUnsaid = isTrialUnsaid(question, worlds);
  const pick = pickOf(comparison, isUnsaid ? MOST_UNSAID : isGuessed(question) ? MOST_GUESSED : 1);
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
      ...(isUnsaid ? [{ id: "message.trialUnsaid", params: {} } as const] : []),
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

/** Whether there is a line worth the name; where pins are counted any line is, that brings some down. */
function sensible({ metric, standings, best }: Comparison): boolean {
  if (metric === "leastHook") return true;
  return metric === "expectedPins" ? standings[best].score > 0 : standings[best].score >= RARELY_STRIKES;
}

function everyFinishAlike({ standings, metric, best }: Comparison): boolean {
  return standings.length > 1 && standings.every((standing) => standing.score >= standings[best].score - CLOSE[metric].asGood);
}

/** Nobody is told that a pick is sure where what it rests on was guessed, however alike the worlds are: more than this is not said. Chosen. */
const MOST_GUESSED = 0.8;

/** Whether delivery, cover or finish came from a word or from nobody. */
function isGuessed({ bowler, ball }: PlanQuestion): boolean {
  return bowler.known !== undefined || !isKnown(ball, "cover") || !isKnown(ball, "finish");
}

/** A trial that fewer worlds than this say, or that the best of them misses by more than chance does once in a hundred (χ² with two finishes, halved). Chosen. */
const FEW_WORLDS = 10;
const FARTHEST_LOG = -4.6;
/** Either the trial or the worlds are then wrong, and no more than this is said. Chosen. */
const MOST_UNSAID = 0.5;

/** Whether shots were seen that the worlds do not say. */
function isTrialUnsaid({ trial }: PlanQuestion, { blocks, weights }: Worlds): boolean {
  if (trial.length === 0 || weights.length === 0) return false;
  return effectiveNumber(weights) < FEW_WORLDS || Math.max(...blocks.flatMap(({ fits }) => fits)) < FARTHEST_LOG;
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

function messagesFor(ground: Ground, comparison: Comparison, pick: Pick | null): readonly Message[] {
  const { standings, metric, best } = comparison;
  const messages: Message[] = [...outsideRuleBook(ground.question.ball), ...unknownOf(ground.question), ...learnedOfHouse(ground.question)];
  if (metric === "leastHook") messages.push({ id: "message.leastHook", params: {} });
  // Why strikes are so rare comes with it: what would help is another ball, not another surface.
  if (metric === "expectedPins") messages.push({ id: "message.expectedPins", params: {} }, noLine(ground, comparison));
  if (metric === "leastChange") messages.push({ id: "message.leastChange", params: {} });
  messages.push(...rollsEarly(comparison));
  if (!sensible(comparison)) return [...messages, noLine(ground, comparison)];
  if (standings.length < 2) return [...messages, { id: "message.onlyOne", params: { finish: finishText(standings[0].finish) } }];
  if (pick) messages.push(...besidePick(ground, comparison, pick));
  if (everyFinishAlike(comparison)) {
    messages.push(noMatter(comparison));
  } else if (metric !== "leastHook" && metric !== "expectedPins" && standings.length > 1) {
    const [side, neighbour] = best === 0 ? (["duller", 1] as const) : (["smoother", best - 1] as const);
    const atEdge = best === 0 || best === standings.length - 1;
    const rise = standings[best].score - standings[neighbour].score;
    if (atEdge && rise > CLOSE[metric].asGood) {
      messages.push({ id: `message.coverAtLimit.${side}`, params: { finish: finishText(standings[best].finish), points: 100 * rise } });
    }
  }
  return messages;
}

/** Rolling so early whatever the finish, a ball has nothing left for the pins: less ball is the answer. */
function rollsEarly({ standings, metric }: Comparison): readonly Message[] {
  const rolls = standings.map(({ rating }) => rating.shot?.rollStartFt ?? Number.POSITIVE_INFINITY);
  const last = Math.max(...rolls);
  return metric !== "leastHook" && last < EARLY_FT ? [{ id: "message.rollsEarly", params: { feet: last } }] : [];
}

/** The two measurements that would add most to the pick. */
function measureNext({ standings }: Comparison, worlds: Worlds): readonly Message[] {
  return worthMeasuring(standings, worlds)
    .slice(0, MEASURES_SAID)
    .map(({ measure, gain }) => ({ id: `message.measure.${measure}`, params: { points: 100 * gain } }));
}

/** How little the finishes differ, in the metric's own unit. */
function noMatter({ standings, metric }: Comparison): Message {
  const scores = standings.map((standing) => standing.score);
  const spread = Math.max(...scores) - Math.min(...scores);
  const finishes = standings.length;
  if (metric === "leastHook") return { id: "message.noMatterOfHook", params: { finishes, boards: spread } };
  if (metric === "expectedPins") return { id: "message.noMatterOfPins", params: { finishes, pins: spread } };
  return { id: "message.noMatter", params: { finishes, points: 100 * spread } };
}

/** What stands for what nobody knows of the ball. */
function unknownOf({ ball, lane }: Ground["question"]): readonly Message[] {
  return (ball.unknown ?? []).map((what) =>
    what === "cover"
      ? { id: "message.coverUnknown", params: { covers: coversOf(ball).join() } }
      : { id: "message.finishUnknown", params: { finish: finishText(ball.finish), shots: lane.playedShots } },
  );
}

function learnedOfHouse({ house }: Ground["question"]): readonly Message[] {
  if (house === null) return [];
  const isOfOtherWorlds = house.inWorlds !== undefined && !isTaughtInWorlds(house);
  return [
    { id: "message.houseLearned", params: { shots: house.shots } },
    ...(isOfOtherWorlds ? [{ id: "message.houseOtherWorlds", params: {} } as const] : []),
  ];
}

/** Rules as they stand when none later is known: a plan has no date. */
const LATEST = "9999-12-31";

/** Odd balls are computed like any other; what lies outside the governing body's limits is said. */
function outsideRuleBook({ massLb, diameterIn, rgIn, differentialIn }: Ball): readonly Message[] {
  const measured = { ...NOTHING_MEASURED, massLb, diametersIn: [diameterIn], rgIn, differentialIn };
  const outside = limitsOf(measured, "usbc", LATEST).filter(({ verdict }) => verdict === "outside");
  return [...new Set(outside.map(({ quantity }) => quantity))].map((quantity) => ({ id: "message.outsideRuleBook", params: { quantity } }));
}

/** Said beside a pick: that today's surface would do as well, and that the line is at the edge of what the bowler can play. */
function besidePick({ question }: Ground, { standings, pick: index, metric }: Comparison, pick: Pick): readonly Message[] {
  const messages: Message[] = [];
  const today = finishText(question.ball.finish);
  if (isKnown(question.ball, "finish") && pick.plateau.includes(today)) messages.push({ id: "message.todayIsAsGood", params: { today } });
  const { line } = standings[index].rating;
  if (metric !== "leastHook" && line) {
    const [least, most] = question.limits.launchAngleDeg;
    const [inner, outer] = question.limits.laydownBoard;
    const atEdge =
      line.launchAngleDeg <= least + 1e-9 ||
      line.launchAngleDeg >= most - 1e-9 ||
      line.laydownBoard <= inner + 1e-9 ||
      line.laydownBoard >= outer - 1e-9;
    if (atEdge) messages.push({ id: "message.lineAtLimit", params: { finish: pick.finish, ...line } });
  }
  return messages;
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
