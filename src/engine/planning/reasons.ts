import type { Line } from "../delivery/bowler.ts";
import type { Message } from "../message.ts";
import { finishText } from "../surface/finish.ts";
import type { Comparison, Standing } from "./comparison.ts";
import type { PLAN_REASONS } from "./messageIds.ts";
import { CLOSE, type Metric } from "./metric.ts";
import type { Candidate } from "./plan.ts";

type Reason = Message<(typeof PLAN_REASONS)[number]>;

/** Changes smaller than these would not be seen from the approach. */
const SEEN_FT = 1;
const SEEN_BOARDS = 0.5;
const SEEN_DEG = 0.2;
/** Slip with which a ball counts as still skidding at the pins, m/s. */
const SKIDDING_MPS = 0.15;
/** So many strikes in a hundred more lost by half a degree than with the pick are worth a sentence. */
const LESS_FORGIVING = 3;

/** Why this pick, in the order in which one would tell it: what it gains, what the alternatives lose, what the bowler will see. */
export function reasonsFor(
  comparison: Comparison,
  candidates: readonly Candidate[],
  today: Standing | null,
  todaysLine: Line | null,
): readonly Reason[] {
  const { standings, plateau, pick, best, metric } = comparison;
  const picked = candidates[pick];
  const reasons: Reason[] = [];
  const say = (id: Reason["id"], params: Reason["params"]) => reasons.push({ id, params });
  const finish = picked.finish;

  // Those that cannot be told apart are told as one: by the best of them, as their rows are.
  const { score } = standings[plateau[1] > plateau[0] ? best : pick];
  if (metric === "leastHook") say("reason.leastHook", { finish, boards: -score });
  else if (metric === "expectedPins") say("reason.pinsDown", { finish, pins: score });
  else say("reason.bestChance", { finish, chancePercent: 100 * score });
  if (plateau[1] > plateau[0]) {
    const ends = { from: candidates[plateau[0]].finish, to: candidates[plateau[1]].finish };
    say("reason.plateau", ends);
  }
  if (countsStrikes(metric)) {
    reasons.push(...lossesBeside(comparison, candidates), ...physicsOfThem(candidates, picked));
  }
  const before = today && candidates.find((candidate) => candidate.finish === finishText(today.finish));
  const hookBefore = before?.hookStartFt ?? today?.rating.shot?.hookStartFt ?? null;
  if (today && finishText(today.finish) !== finish) {
    const points = 100 * (standings[pick].score - today.score);
    if (countsStrikes(metric) && points > 1) say("reason.todayLoses", { today: finishText(today.finish), points });
    if (hookBefore !== null && picked.hookStartFt !== null && Math.abs(picked.hookStartFt - hookBefore) >= SEEN_FT) {
      const feet = picked.hookStartFt - hookBefore;
      say(feet > 0 ? "reason.hookLater" : "reason.hookEarlier", { today: finishText(today.finish), finish, feet: Math.abs(feet) });
    }
  }
  const change = picked.onTodaysLine?.boardChange ?? 0;
  if (metric !== "leastHook" && todaysLine && picked.line && Math.abs(change) >= SEEN_BOARDS) {
    say(change > 0 ? "reason.todaysLineHigher" : "reason.todaysLineLighter", { finish, boards: Math.abs(change), ...picked.line });
  }
  return reasons;
}

function countsStrikes(metric: Metric): boolean {
  return metric === "strikeChance" || metric === "leastChange";
}

/** What the dullest and the smoothest candidate lose against the pick, where that is more than nothing. */
function lossesBeside({ standings, pick, metric }: Comparison, candidates: readonly Candidate[]): readonly Reason[] {
  const last = standings.length - 1;
  const loss = (i: number) => 100 * (standings[pick].score - standings[i].score);
  const reasons: Reason[] = [];
  if (pick > 0 && loss(0) > 100 * CLOSE[metric].asGood)
    reasons.push({ id: "reason.dullLoses", params: { finish: candidates[0].finish, points: loss(0) } });
  if (pick < last && loss(last) > 100 * CLOSE[metric].asGood)
    reasons.push({ id: "reason.smoothLoses", params: { finish: candidates[last].finish, points: loss(last) } });
  return reasons;
}

/** How entry angle, slip and the launch window run from dull to smooth. */
function physicsOfThem(candidates: readonly Candidate[], picked: Candidate): readonly Reason[] {
  const played = candidates.filter((candidate) => candidate.entryAngleDeg !== null);
  if (played.length < 2) return [];
  const [dull, smooth] = [played[0], played[played.length - 1]];
  const [dullEntryDeg, smoothEntryDeg] = [dull.entryAngleDeg ?? 0, smooth.entryAngleDeg ?? 0];
  const reasons: Reason[] = [];
  if (Math.abs(smoothEntryDeg - dullEntryDeg) >= SEEN_DEG) {
    reasons.push({
      id: smoothEntryDeg > dullEntryDeg ? "reason.entryRises" : "reason.entryFalls",
      params: { dullFinish: dull.finish, dullEntryDeg, smoothFinish: smooth.finish, smoothEntryDeg },
    });
  }
  const points = 100 * (picked.missLoss?.halfDegree ?? 0);
  const smoothPoints = 100 * (smooth.missLoss?.halfDegree ?? 0);
  if (smooth !== picked && smoothPoints > points + LESS_FORGIVING) {
    reasons.push({
      id: "reason.lessForgiving",
      params: { finish: smooth.finish, points: smoothPoints, pickFinish: picked.finish, pickPoints: points },
    });
  }
  const slipMps = smooth.slipAtPinsMps ?? 0;
  if (slipMps > SKIDDING_MPS) reasons.push({ id: "reason.slipLeft", params: { finish: smooth.finish, slipMps } });
  return reasons;
}
