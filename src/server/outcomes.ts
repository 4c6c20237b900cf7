import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import { type OutcomeReport, outcomeReport, type PlanOutcome } from "#engine/learning/outcomes";
import type { Records } from "#records/records";
import { everything } from "./everything.ts";

/** What came of the work, over every ticket of which a bowler has said something. */
export async function outcomesOf({ tickets, balls }: Pick<Records, "tickets" | "balls">): Promise<OutcomeReport> {
  const told = (await everything<Ticket>((after) => tickets.list({ after, limit: 500 }))).filter(({ outcome }) => outcome !== null);
  const covers = new Map<string, Ball["cover"]>();
  for (const { ballId } of told) if (!covers.has(ballId)) covers.set(ballId, (await balls.get(ballId)).cover);
  return outcomeReport(
    told.flatMap(({ outcome, ballId, symptoms, planSure }): PlanOutcome[] =>
      outcome === null ? [] : [{ outcome: outcome.answer, cover: covers.get(ballId) ?? null, symptoms, sureShare: planSure }],
    ),
  );
}
