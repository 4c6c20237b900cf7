import { ASSUMPTIONS, type AssumptionId } from "../assumptions.ts";
import { type Ball, isKnown } from "../ball/ball.ts";
import { coversOf, knownCover } from "../ball/covers.ts";
import type { Hand, Line } from "../delivery/bowler.ts";
import type { Message } from "../message.ts";
import { leaveSeen } from "../pins/carry.ts";
import { leaveText } from "../pins/leave.ts";
import { cautionsFor } from "../rules/cautions.ts";
import { limitsOf } from "../rules/limits.ts";
import { NOTHING_MEASURED } from "../rules/measuredBall.ts";
import { finishText, sameFinish } from "../surface/finish.ts";
import { candidatesOf } from "./candidates.ts";
import { band, type Comparison, compare, type Standing, standingOf } from "./comparison.ts";
import type { FinishDraws } from "./draws.ts";
import { type PlanGround, throwerOn } from "./ground.ts";
import { fadeOf, keepsGames } from "./keepsGames.ts";
import { noLine } from "./noLine.ts";
import type { AssumptionUse, Candidate, FinishPlan, Interval, Pick, PinsLeft } from "./plan.ts";
import { assumptionsOfBall } from "./planAssumptions.ts";
import { type FinishRating, type MeanShot, meanShot } from "./rating.ts";
import { reasonsFor } from "./reasons.ts";
import { ruleVerdicts } from "./ruleVerdicts.ts";
import { AS_GOOD, OBJECTIVES } from "./score.ts";
import { todaysLine } from "./todaysLine.ts";

/** Below this best chance there is no line worth the name: a ball thrown straight at the pocket does better. */
const SENSIBLE_CHANCE = 0.05;
const SURE_FROM = 0.9;
const LIKELY_FROM = 0.7;

/**
 * The plan from what was rated and drawn so far: candidates side by side, the plateau and the pick, and why. Called again as more is known;
 * without draws the pick is `unsure` and the intervals are single points.
 */
export function decide(ground: PlanGround, ratings: readonly FinishRating[], draws: readonly FinishDraws[]): FinishPlan {
  const { question } = ground;
  const objective = OBJECTIVES[question.ball.job];
  const ratingOf = (finish: FinishRating["finish"]) => ratings.find((rating) => sameFinish(rating.finish, finish));
  const standings = candidatesOf(question).flatMap((finish) => {
    const rating = ratingOf(finish);
    return rating ? [standingOf(rating, draws, objective)] : [];
  });
  const today = ratingOf(question.ball.finish) ?? null;
  const played = todaysLine(ground, today);
  // Nothing is held against a finish that nobody knows to be there.
  const isThere = isKnown(question.ball, "finish");
  const known = isThere ? today : null;
  const todaysShot = known && played ? shotOn(ground, known, played) : null;
  const comparison = compare(standings, objective, isThere ? question.ball.finish : null);
  const laws = fadeOf(knownCover(question.ball), ground.assumed);
  const candidates = standings.map((standing, i) => ({
    ...candidateOf(ground, standing, played, todaysShot),
    keepsGames: keepsGames(comparison, i, laws),
  }));
  const pick = pickOf(comparison);
  const found = comparison.standings[comparison.pick];
  const reasons = pick ? reasonsFor(comparison, candidates, known && standingOf(known, draws, objective), known && played) : [];
  return {
    metric: "strikeChance",
    today: isThere ? { finish: finishText(question.ball.finish), line: played } : { finish: null, line: null },
    candidates,
    pick,
    messages: messagesFor(ground, comparison, pick),
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

function shotOn(ground: PlanGround, rating: FinishRating, line: Line): MeanShot {
  return meanShot(throwerOn(rating.found, ground.question, rating.finish, ground.assumed), line);
}

function candidateOf(
  ground: PlanGround,
  standing: Standing,
  todaysLine: Line | null,
  todaysShot: MeanShot | null,
): Omit<Candidate, "keepsGames"> {
  const { rating } = standing;
  const onToday = todaysLine && todaysShot ? shotOn(ground, rating, todaysLine) : null;
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
    chance: chanceOf(ground, standing),
    missRoom: rating.missRoom,
    pins: pinsLeft(rating, ground.question.bowler.hand),
    onTodaysLine:
      onToday && todaysShot
        ? {
            boardAtPins: onToday.boardAtPins,
            boardChange: onToday.boardAtPins - todaysShot.boardAtPins,
            entryAngleDeg: onToday.entryAngleDeg,
          }
        : null,
  };
}

function pinsLeft({ carry }: FinishRating, hand: Hand): PinsLeft | null {
  if (carry === null) return null;
  const { strike, pinsDown, other } = carry;
  return { strike, pinsDown, leaves: carry.leaves.map(({ leave, share }) => ({ leave: leaveText(leaveSeen(leave, hand)), share })), other };
}

/** A spare or house ball is not asked to strike, and a finish without a line has no chance to speak of. */
function chanceOf({ question }: PlanGround, standing: Standing): Interval | null {
  if (OBJECTIVES[question.ball.job] === "leastHook" || standing.rating.line === null) return null;
  return { value: standing.score, ...band(standing.drawn, standing.score) };
}

function sensible(comparison: Comparison): boolean {
  return comparison.objective === "leastHook" || comparison.standings[comparison.best].score >= SENSIBLE_CHANCE;
}

function everyFinishAlike({ standings, objective, best }: Comparison): boolean {
  return standings.length > 1 && standings.every((standing) => standing.score >= standings[best].score - AS_GOOD[objective]);
}

function pickOf(comparison: Comparison): Pick | null {
  if (comparison.standings.length < 2 || !sensible(comparison) || everyFinishAlike(comparison)) return null;
  const { standings, plateau, pick, cliff, sureShare } = comparison;
  return {
    finish: finishText(standings[pick].finish),
    plateau: standings.slice(plateau[0], plateau[1] + 1).map((standing) => finishText(standing.finish)),
    cliff,
    sure: sureShare >= SURE_FROM ? "sure" : sureShare >= LIKELY_FROM ? "likely" : "unsure",
    sureShare,
  };
}

function messagesFor(ground: PlanGround, comparison: Comparison, pick: Pick | null): readonly Message[] {
  const { standings, objective, best } = comparison;
  const messages: Message[] = [...outsideRuleBook(ground.question.ball), ...unknownOf(ground.question), ...learnedOfHouse(ground.question)];
  if (objective === "leastHook") messages.push({ id: "message.leastHook", params: {} });
  if (objective === "heldChance") messages.push({ id: "message.leastChange", params: {} });
  if (!sensible(comparison)) return [...messages, noLine(ground, comparison)];
  if (standings.length < 2) return [...messages, { id: "message.onlyOne", params: { finish: finishText(standings[0].finish) } }];
  if (pick) messages.push(...besidePick(ground, comparison, pick));
  if (everyFinishAlike(comparison)) {
    messages.push(
      objective === "leastHook"
        ? { id: "message.noMatterOfHook", params: { finishes: standings.length, boards: spreadPoints(standings) / 100 } }
        : { id: "message.noMatter", params: { finishes: standings.length, points: spreadPoints(standings) } },
    );
  } else if (objective !== "leastHook" && standings.length > 1) {
    const [side, neighbour] = best === 0 ? (["duller", 1] as const) : (["smoother", best - 1] as const);
    const atEdge = best === 0 || best === standings.length - 1;
    const rise = standings[best].score - standings[neighbour].score;
    if (atEdge && rise > AS_GOOD[objective]) {
      messages.push({ id: `message.coverAtLimit.${side}`, params: { finish: finishText(standings[best].finish), points: 100 * rise } });
    }
  }
  return messages;
}

/** What stands for what nobody knows of the ball. */
function unknownOf({ ball, lane }: PlanGround["question"]): readonly Message[] {
  return (ball.unknown ?? []).map((what) =>
    what === "cover"
      ? { id: "message.coverUnknown", params: { covers: coversOf(ball).join() } }
      : { id: "message.finishUnknown", params: { finish: finishText(ball.finish), shots: lane.playedShots } },
  );
}

function learnedOfHouse({ house }: PlanGround["question"]): readonly Message[] {
  return house === null ? [] : [{ id: "message.houseLearned", params: { shots: house.shots } }];
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
function besidePick({ question }: PlanGround, { standings, pick: index, objective }: Comparison, pick: Pick): readonly Message[] {
  const messages: Message[] = [];
  const today = finishText(question.ball.finish);
  if (isKnown(question.ball, "finish") && pick.plateau.includes(today)) messages.push({ id: "message.todayIsAsGood", params: { today } });
  const { line } = standings[index].rating;
  if (objective !== "leastHook" && line) {
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

function spreadPoints(standings: readonly Standing[]): number {
  const scores = standings.map((standing) => standing.score);
  return 100 * (Math.max(...scores) - Math.min(...scores));
}

/** The assumptions that the plan rests on, with the values used. */
function assumptionsUsed({ question, assumed }: PlanGround): readonly AssumptionUse[] {
  const measuredFilm: readonly AssumptionId[] = question.lane.pattern.kind === "filmPoints" ? ["film.unit"] : [];
  const { house } = question;
  const learned = house?.ids ?? [];
  const ids = [...new Set([...assumptionsOfBall(question.ball), ...measuredFilm, ...learned])];
  return ids.map((id) => {
    const { low, high, unit, mark, source } = ASSUMPTIONS[id];
    const at = learned.indexOf(id);
    if (house === null || at < 0) return { id, value: assumed[id], low, high, unit, mark, source };
    const drawn = house.draws.map((row) => row[at]);
    return { id, value: assumed[id], ...band(drawn, assumed[id]), unit, mark: "learned", source };
  });
}
