import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { CUSTOMER } from "./en/customer.ts";

/** Changes of entry angle that a bowler sees as "a little" and as more, degrees. */
const LITTLE_DEG = 0.2;
const MUCH_DEG = 0.6;
/** Boards below which the ball hits where it hit before. */
const SEEN_BOARDS = 0.5;

/** What the bowler is told, in feet and words: no chances, no angles. A percentage would be taken for a promise. */
export function customerLines(plan: FinishPlan): readonly string[] {
  const said = new Set(plan.messages.map((message) => message.id));
  if (plan.pick === null) return [withoutPick(said)];
  const lines = plan.pick.finish === plan.today.finish ? [CUSTOMER.leaveIt] : changeLines(plan, plan.pick.finish);
  if (said.has("message.coverAtLimit.duller") || said.has("message.noLine.hooksTooLittle")) lines.push(CUSTOMER.strongerBall);
  if (said.has("message.coverAtLimit.smoother") || said.has("message.noLine.hooksTooMuch") || said.has("message.rollsEarly"))
    lines.push(CUSTOMER.weakerBall);
  return lines;
}

function withoutPick(said: ReadonlySet<string>): string {
  if (said.has("message.noLine.hooksTooMuch") || said.has("message.rollsEarly")) return CUSTOMER.hooksTooMuch;
  if (said.has("message.noLine.hooksTooLittle")) return CUSTOMER.hooksTooLittle;
  if (said.has("message.noLine.scattered") || said.has("message.noTurn")) return CUSTOMER.notTheSurface;
  if (said.has("message.slidesThrough")) return CUSTOMER.slidesThrough;
  return CUSTOMER.noMatter;
}

function changeLines(plan: FinishPlan, pick: string): string[] {
  const before = plan.candidates.find((candidate) => candidate.finish === plan.today.finish);
  const after = plan.candidates.find((candidate) => candidate.finish === pick);
  const lines = [plan.today.finish === null ? CUSTOMER.finish(pick) : CUSTOMER.refinish(plan.today.finish, pick)];
  const motion = [hookChange(plan), after === undefined ? null : entryChange(before, after)].filter((part) => part !== null);
  if (motion.length > 0) lines.push(CUSTOMER.itWill(motion));
  const move = after?.onTodaysLine?.boardChange ?? 0;
  if (Math.abs(move) >= SEEN_BOARDS) lines.push(CUSTOMER.onYourLine(Math.abs(move), move > 0 ? "higher" : "lighter"));
  return lines;
}

/** The engine says by how much the hook moves, whether or not today's finish is among the candidates. */
function hookChange(plan: FinishPlan): string | null {
  for (const { id, params } of plan.reasons) {
    if (id !== "reason.hookLater" && id !== "reason.hookEarlier") continue;
    return CUSTOMER.hook(Number(params.feet), id === "reason.hookLater" ? "later" : "earlier");
  }
  return null;
}

function entryChange(before: Candidate | undefined, after: Candidate): string | null {
  if (before === undefined || before.entryAngleDeg === null || after.entryAngleDeg === null) return null;
  const change = after.entryAngleDeg - before.entryAngleDeg;
  if (Math.abs(change) < LITTLE_DEG) return null;
  return CUSTOMER.entry(Math.abs(change) >= MUCH_DEG ? "much" : "little", change > 0 ? "sharper" : "smoother");
}
