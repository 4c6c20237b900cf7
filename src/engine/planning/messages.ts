import { type Ball, coversOf, isKnown } from "../ball/ball.ts";
import type { Message } from "../message.ts";
import { limitsOf } from "../rules/limits.ts";
import { NOTHING_MEASURED } from "../rules/measuredBall.ts";
import { finishText } from "../surface/finish.ts";
import type { Comparison, Worlds } from "./comparison.ts";
import type { Ground } from "./ground.ts";
import { CLOSE, RARELY_STRIKES } from "./metric.ts";
import { noLine } from "./noLine.ts";
import type { Pick } from "./plan.ts";
import type { PlanQuestion } from "./question.ts";
import { isTaughtInWorlds } from "./worldsAsked.ts";
import { worthMeasuring } from "./worthMeasuring.ts";

/** What is said in place of a pick, or beside it. */

const MEASURES_SAID = 2;
/** A ball that rolls before here has given its turn away in the front of the lane: well short of where any pattern ends. Chosen. */
const EARLY_FT = 30;

/** Whether there is a line worth the name; where pins are counted any line is, that brings some down. */
export function sensible({ metric, standings, best }: Comparison): boolean {
  if (metric === "leastHook") return true;
  return metric === "expectedPins" ? standings[best].score > 0 : standings[best].score >= RARELY_STRIKES;
}

export function everyFinishAlike({ standings, metric, best }: Comparison): boolean {
  return standings.length > 1 && standings.every((standing) => standing.score >= standings[best].score - CLOSE[metric].asGood);
}

export function messagesFor(ground: Ground, comparison: Comparison, pick: Pick | null): readonly Message[] {
  const { standings, metric, best } = comparison;
  const { question } = ground;
  const messages: Message[] = [
    ...outsideRuleBook(question.ball),
    ...backup(question),
    ...unknownOf(question),
    ...learnedOfHouse(question),
    ...readOnBench(question),
  ];
  if (metric === "leastHook") messages.push({ id: "message.leastHook", params: {} });
  // Why strikes are so rare comes with it: what would help is another ball, not another surface.
  if (metric === "expectedPins") messages.push({ id: "message.expectedPins", params: {} }, noLine(ground, comparison));
  if (metric === "leastChange") messages.push({ id: "message.leastChange", params: {} });
  if (!sensible(comparison)) return [...messages, noLine(ground, comparison)];
  if (metric === "strikeChance" || metric === "leastChange") messages.push(...hardlyTurns(comparison));
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

/**
 * What no surface mends: rolling so early whatever the finish that nothing is left for the pins, where less ball is the answer; sliding the whole way on oil
 * to the pins; or a hand that gives the ball no turn.
 */
function hardlyTurns({ standings }: Comparison): readonly Message[] {
  const shots = standings.flatMap(({ rating }) => (rating.shot === null ? [] : [rating.shot]));
  const lastRoll = Math.max(...shots.map(({ rollStartFt }) => rollStartFt ?? Number.POSITIVE_INFINITY));
  if (lastRoll < EARLY_FT) return [{ id: "message.rollsEarly", params: { feet: lastRoll } }];
  if (shots.some(({ hookStartFt }) => hookStartFt !== null)) return [];
  return [{ id: Number.isFinite(lastRoll) ? "message.noTurn" : "message.slidesThrough", params: {} }];
}

/** Boards of a backup ball count from the other edge than the bowler's. */
function backup({ bowler }: PlanQuestion): readonly Message[] {
  return bowler.isBackup ? [{ id: "message.backup", params: { side: bowler.hand } }] : [];
}

/** The two measurements that would add most to the pick. */
export function measureNext({ standings }: Comparison, worlds: Worlds): readonly Message[] {
  return worthMeasuring(standings, worlds)
    .slice(0, MEASURES_SAID)
    .map(({ measure, gain }) => ({ id: `message.measure.${measure}`, params: { points: 100 * gain } }));
}

function readOnBench({ readings }: PlanQuestion): readonly Message[] {
  return readings.length === 0 ? [] : [{ id: "message.padReadings", params: { readings: readings.length } }];
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
function unknownOf({ ball, lane }: PlanQuestion): readonly Message[] {
  return (ball.unknown ?? []).map((what) =>
    what === "cover"
      ? { id: "message.coverUnknown", params: { covers: coversOf(ball).join() } }
      : { id: "message.finishUnknown", params: { finish: finishText(ball.finish), shots: lane.playedShots } },
  );
}

function learnedOfHouse({ house }: PlanQuestion): readonly Message[] {
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
