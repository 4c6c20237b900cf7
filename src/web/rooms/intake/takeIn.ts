import type { Ball } from "#contract/records/ball";
import { benchBallFor, countedSinceWork, knownFinish } from "#contract/records/benchBall";
import type { Price } from "#contract/records/money";
import { usualPrices, workIn } from "#contract/records/pricedWork";
import type { Ticket, TicketWritten } from "#contract/records/ticket";
import type { Visit } from "#contract/records/visit";
import type { Arrow } from "#engine/delivery/arrows";
import type { HookWord, SpeedWord } from "#engine/delivery/words";
import { STOP_SENTENCES } from "#words/en/bench";
import { plannedStages } from "../../benchWork/plannedStages.ts";
import { chosenPricing, type Priced, withPricing } from "../../shop/pricing.ts";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { textOrNull, wordOrNull } from "../../shop/typedValues.ts";
import { type BallDraft, mustStop, pricingDraft, type SaidOfDelivery, scratchesOf, type VisitDraft } from "./visitDraft.ts";

interface TakenIn {
  readonly draft: VisitDraft;
  /** The moment at which it was first sent, and what was promised then. */
  readonly sent: NonNullable<VisitDraft["sent"]>;
  /** Those that hold today. */
  readonly prices: readonly Price[];
  readonly currency: string;
  readonly taxMillipercent: number;
  /** Told of each part that the shop has: going on after a fault, even by somebody else, leaves it out. */
  onKept(part: string, id: string): void;
}

/**
 * Keeps a visit: the bowler and the balls that are new, the visit, a ticket a ball. Every write has a key made from the draft's and says the moment of the
 * first try, so that going on after a fault keeps nothing twice.
 *
 * @returns ids of the visit, and of the tickets in the order of the balls
 * @throws {ShopFault}
 */
export async function takeIn(taken: TakenIn): Promise<{ readonly visitId: string; readonly tickets: readonly string[] }> {
  const { draft, currency } = taken;
  const { at, promisedFor } = taken.sent;
  const part = partsOf(taken);
  const bowlerId = await bowlerOf(draft, at, part);
  const why = (draft.promiseWhy ?? "").trim();
  const promises = draft.promisedFor === null ? [] : [{ at, ticketId: null, promisedFor, why }];
  const visit = { bowlerId, arrivedAt: at, promisedFor, promises, currency };
  const visitId = await part("visit", (once) => answered(shop.visits.$post({ json: visit }, once)));
  const tickets: string[] = [];
  for (const ball of draft.balls) {
    const ballId = await ballOf(ball, bowlerId, at, part);
    tickets.push(
      await part(`ticket-${ball.key}`, async (once) => {
        const kept = await answered(shop.balls[":id"].$get({ param: { id: ballId } }));
        const playedOn = draft.playedOn ?? null;
        const json = { ...(await workOn(ball, kept, at)), visitId, ballId, bowlerId, receivedAt: at, promisedFor, playedOn };
        return answered(shop.tickets.$post({ json }, once));
      }),
    );
  }
  await part("charges", (once) => charged(visitId, tickets, taken, once));
  return { visitId, tickets };
}

/** Puts what the work costs on the visit, each line for its ticket: which work it is stands in the tickets. */
async function charged(
  visitId: string,
  tickets: readonly string[],
  { draft: { balls }, prices, taxMillipercent }: TakenIn,
  once: Once,
): Promise<Visit> {
  const visit = await answered(shop.visits[":id"].$get({ param: { id: visitId } }));
  let priced: Priced = visit;
  // Its answer was lost: it is written there already.
  if (visit.charges.length + visit.free.length > 0) return visit;
  for (const [i, ball] of balls.entries()) {
    const ticket = await answered(shop.tickets[":id"].$get({ param: { id: tickets[i] } }));
    const chosen = chosenPricing(pricingDraft(ball), prices, usualPrices(workIn(ticket.stages), prices), taxMillipercent);
    priced = withPricing(priced, { id: ticket.id, ballName: ball.name.trim() }, chosen);
  }
  if (priced === visit) return visit;
  const json = { charges: [...priced.charges], free: [...priced.free] };
  return answered(shop.visits[":id"].$patch({ param: { id: visitId }, json, header: madeOn(visit) }, once));
}

type Once = { readonly headers: { readonly "Idempotency-Key": string } };
/** Makes a part where the shop has not got it yet. Gives its id. */
type Part = (name: string, make: (once: Once) => Promise<{ readonly id: string }>) => Promise<string>;

function partsOf({ draft, onKept }: TakenIn): Part {
  return async (name, make) => {
    const known = draft.kept?.[name];
    if (known !== undefined) return known;
    const { id } = await make({ headers: { "Idempotency-Key": `${draft.key}-${name}` } });
    onKept(name, id);
    return id;
  };
}

/** The bowler as kept: made where new; what was told of the delivery is written down either way. */
async function bowlerOf({ bowler, told = {} }: VisitDraft, at: string, part: Part): Promise<string | null> {
  if (bowler === null) return null;
  const deliveries = deliveryFrom(told, at);
  const { id } = bowler;
  if (id === null) {
    const phone = bowler.phone.trim();
    const json = { name: bowler.name.trim(), phone: phone === "" ? null : phone, deliveries };
    return part("bowler", (once) => answered(shop.bowlers.$post({ json }, once)));
  }
  if (deliveries.length === 0) return id;
  return part("told", async (once) => {
    const kept = await answered(shop.bowlers[":id"].$get({ param: { id } }));
    // Its answer was lost: it is written there already.
    if (kept.deliveries.some((one) => one.at === at)) return kept;
    const json = { deliveries: [...kept.deliveries, ...deliveries] };
    return answered(shop.bowlers[":id"].$patch({ param: { id }, json, header: { "If-Match": `"${kept.version}"` } }, once));
  });
}

function deliveryFrom({ speed = "", hook = "", plays = "" }: SaidOfDelivery, at: string) {
  if (speed === "" && hook === "" && plays === "") return [];
  const told = { speed: wordOrNull<SpeedWord>(speed), hook: wordOrNull<HookWord>(hook), plays: wordOrNull<Arrow>(plays) };
  return [{ at, how: "word only" as const, ...told, note: "" }];
}

/** The ball as it is kept: made where it is new; what was found on it and the games it has seen are written to it either way. */
async function ballOf(draft: BallDraft, bowlerId: string | null, at: string, part: Part): Promise<string> {
  const found = draft.found.map((what) => ({ at, what, note: "" }));
  if (draft.ballId === null) {
    const serial = draft.serial.trim();
    const json = {
      name: draft.name.trim(),
      serial: serial === "" ? null : serial,
      bowlerId,
      cover: draft.cover === "" ? null : draft.cover,
      found,
      games: gamesTold(draft, 0, at),
    };
    return part(`ball-${draft.key}`, (once) => answered(shop.balls.$post({ json }, once)));
  }
  const { ballId } = draft;
  if (found.length === 0 && gamesTold(draft, 0, at).length === 0) return ballId;
  return part(`found-${draft.key}`, async (once) => {
    const kept = await answered(shop.balls[":id"].$get({ param: { id: ballId } }));
    // Its answer was lost: it is written there already.
    if ([...kept.found, ...kept.games].some((one) => one.at === at)) return kept;
    const json = { found: [...kept.found, ...found], games: [...kept.games, ...gamesTold(draft, countedSinceWork(kept), at)] };
    return answered(shop.balls[":id"].$patch({ param: { id: ballId }, json, header: { "If-Match": `"${kept.version}"` } }, once));
  });
}

/** Games since the last work, as the ball keeps them: those that were not counted yet, or the word. @param counted since then */
function gamesTold({ games = null }: BallDraft, counted: number, at: string) {
  if (games === null || games === "not known") return [];
  if (typeof games === "string") return [{ at, games: 0, word: games }];
  return games > counted ? [{ at, games: games - counted, word: null }] : [];
}

async function lastTimeOf(id: string): Promise<Ticket | null> {
  const { last } = await answered(shop.balls[":id"]["last-time"].$get({ param: { id } }));
  return last?.ticket ?? null;
}

/** Symptoms, finish and stages of a ball's ticket: as last time, or to the finish wanted. */
async function workOn(draft: BallDraft, ball: Ball, at: string): Promise<Omit<TicketWritten, "visitId" | "ballId" | "receivedAt">> {
  const common = {
    complaint: draft.words,
    ...scratchesOf(draft),
    besidesWhy: (draft.besidesWhy ?? "").trim(),
    whatChanged: draft.whatChanged === "" ? null : draft.whatChanged,
    findings: draft.found.join(", "),
    finishBefore: knownFinish(ball),
    stops: mustStop(draft) ? [{ at, why: STOP_SENTENCES[draft.found.includes("crack") ? "crack" : "hollowSound"] }] : [],
  };
  const last = draft.sameAsLast && draft.ballId !== null ? await lastTimeOf(draft.ballId) : null;
  const wanted = last === null ? textOrNull(draft.wanted) : last.finishAfter;
  if (wanted === null || mustStop(draft)) return { ...common, finishAfter: wanted, stages: [] };
  const bench = benchBallFor(scratchesOf(draft), ball);
  // What was enough last time does not take deep scratches down.
  const isAsLast = last !== null && bench.scratches !== "deep";
  return { ...common, finishAfter: wanted, stages: isAsLast ? last.stages : plannedStages(bench, wanted) };
}
