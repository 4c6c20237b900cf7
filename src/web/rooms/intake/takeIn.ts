import type { Price } from "#contract/records/money";
import type { Ticket, TicketWritten } from "#contract/records/ticket";
import { STOP_SENTENCES } from "#words/en/bench";
import { benchBallOf, knownFinish } from "../../benchWork/benchBall.ts";
import { plannedStages } from "../../benchWork/plannedStages.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { type BallDraft, mustStop, type VisitDraft } from "./visitDraft.ts";

interface TakenIn {
  readonly draft: VisitDraft;
  readonly promisedFor: string;
  readonly prices: readonly Price[];
  readonly currency: string;
}

/**
 * Keeps a visit: the bowler and the balls that are new, the visit, a ticket a ball. Every write has a key made from the draft's, so that going on after a fault keeps nothing twice.
 *
 * @returns the tickets, in the order of the balls
 * @throws {ShopFault}
 */
export async function takeIn({ draft, promisedFor, prices, currency }: TakenIn): Promise<readonly Ticket[]> {
  const now = new Date().toISOString();
  const once = (part: string) => ({ headers: { "Idempotency-Key": `${draft.key}-${part}` } });
  const bowlerId = await bowlerOf(draft, once);
  const charges = draft.balls.flatMap(({ priceId, name }) => {
    const price = prices.find(({ id }) => id === priceId);
    return price === undefined ? [] : [{ what: `${price.name}: ${name}`, eachCents: price.eachCents, taxPermille: price.taxPermille }];
  });
  const visit = await answered(shop.visits.$post({ json: { bowlerId, arrivedAt: now, promisedFor, currency, charges } }, once("visit")));
  const tickets: Ticket[] = [];
  for (const ball of draft.balls) {
    const kept = await ballOf(ball, bowlerId, now, once);
    const json = { ...(await workOn(ball, kept)), visitId: visit.id, ballId: kept.id, bowlerId, receivedAt: now, promisedFor };
    tickets.push(await answered(shop.tickets.$post({ json }, once(`ticket-${ball.key}`))));
  }
  return tickets;
}

type Once = (part: string) => { readonly headers: { readonly "Idempotency-Key": string } };

async function bowlerOf({ bowler }: VisitDraft, once: Once): Promise<string | null> {
  if (bowler === null) return null;
  if (bowler.id !== null) return bowler.id;
  const phone = bowler.phone.trim();
  const made = await answered(
    shop.bowlers.$post({ json: { name: bowler.name.trim(), phone: phone === "" ? null : phone } }, once("bowler")),
  );
  return made.id;
}

/** The ball as it is kept: made where it is new; what was found on it is written to it either way. */
async function ballOf(draft: BallDraft, bowlerId: string | null, now: string, once: Once) {
  const found = draft.found.map((what) => ({ at: now, what, note: "" }));
  if (draft.ballId === null) {
    const serial = draft.serial.trim();
    const json = {
      name: draft.name.trim(),
      serial: serial === "" ? null : serial,
      bowlerId,
      cover: draft.cover === "" ? ("solid" as const) : draft.cover,
      notes: draft.cover === "" ? COVER_TAKEN : "",
      found,
    };
    return answered(shop.balls.$post({ json }, once(`ball-${draft.key}`)));
  }
  const kept = await answered(shop.balls[":id"].$get({ param: { id: draft.ballId } }));
  if (found.length === 0) return kept;
  return answered(
    shop.balls[":id"].$patch(
      { param: { id: kept.id }, json: { found: [...kept.found, ...found] }, header: { "If-Match": `"${kept.version}"` } },
      once(`found-${draft.key}`),
    ),
  );
}

const COVER_TAKEN = "Cover not known at the counter; reactive solid taken.";

/** Symptoms, finish and stages of a ball's ticket: as last time, or to the finish wanted. */
async function workOn(
  draft: BallDraft,
  ball: Parameters<typeof benchBallOf>[0],
): Promise<Omit<TicketWritten, "visitId" | "ballId" | "receivedAt">> {
  const common = {
    complaint: draft.words,
    symptoms: [...draft.symptoms],
    whatChanged: draft.whatChanged === "" ? null : draft.whatChanged,
    findings: draft.found.join(", "),
    finishBefore: knownFinish(ball),
    stops: mustStop(draft)
      ? [{ at: new Date().toISOString(), why: STOP_SENTENCES[draft.found.includes("crack") ? "crack" : "hollowSound"] }]
      : [],
  };
  if (draft.sameAsLast && draft.ballId !== null) {
    const { last } = await answered(shop.balls[":id"]["last-time"].$get({ param: { id: draft.ballId } }));
    if (last !== null) return { ...common, finishAfter: last.ticket.finishAfter, stages: last.ticket.stages };
  }
  const wanted = draft.wanted === "" ? null : draft.wanted;
  const stages = wanted === null || mustStop(draft) ? [] : plannedStages(benchBallOf(ball), wanted);
  return { ...common, finishAfter: wanted, stages };
}
