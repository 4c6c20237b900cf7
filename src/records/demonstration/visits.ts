import { billOf } from "#contract/records/bill";
import { lineAt, usualPrices, workIn } from "#contract/records/pricedWork";
import { benchSecondsOf, promiseFor, restSecondsOf, USUAL_OPENINGS } from "#contract/records/promise";
import type { Ticket } from "#contract/records/ticket";
import type { TicketState } from "#contract/records/ticketStates";
import type { Visit } from "#contract/records/visit";
import { COVERS } from "#engine/ball/covers";
import { effectiveRaUm, type Finish, finishText } from "#engine/surface/finish";
import type { Stage, StagePlan } from "#engine/surface/stages";
import { doStage, measure, wayOf } from "./benchWork.ts";
import type { Customer, CustomerBall } from "./customers.ts";
import type { Furnished, Technician } from "./furnish.ts";
import { countGames } from "./games.ts";
import { COMPLAINTS } from "./invented.ts";
import type { Making, Times } from "./making.ts";
import { beginOf, someTime, ZONE } from "./openHours.ts";
import { HOUR, MINUTE } from "./shopClock.ts";
import { roughnessAt, stagesFor } from "./surface.ts";

/** A ball's work in this visit. */
interface Job {
  readonly ball: CustomerBall;
  readonly said: keyof typeof COMPLAINTS;
  readonly wanted: Finish;
  readonly plan: StagePlan;
  ticket: Ticket;
}

/** The sentence that is ticked at the counter for what was said. */
const SYMPTOM_OF = { care: "justRefresh", tooSmooth: "hooksLess", tooDull: "hooksEarlyHitsWeak" } as const;

/** How often somebody has to be asked first. */
const ASKED_FIRST = 0.12;

/** One visit, from the counter to the counter. Begins now; yields the times at which it goes on. */
export async function* visitOf(making: Making, shop: Furnished, customer: Customer, balls: readonly CustomerBall[]): Times {
  const { clock, dice } = making;
  const arrivedMs = clock.now();
  const planned = balls.map((ball) => plannedFor(making, ball));
  const visit = await arrive(making, shop, customer, planned);
  const jobs: Job[] = [];
  for (const one of planned) jobs.push(await takeIn(making, customer, visit, one));
  await charge(making, shop, visit, jobs);
  const technician = shop.technicians.reduce((free, one) => (one.busyUntilMs < free.busyUntilMs ? one : free));
  yield beginOf(arrivedMs + dice.between(0.05, 0.4) * HOUR, MINUTE);
  if (dice.chance(ASKED_FIRST)) {
    for (const job of jobs) await move(making, job, "waiting for approval", technician);
    yield someTime(dice, clock.now(), [1, 5]);
  }
  yield* workOn(making, shop, technician, jobs);
  yield someTime(dice, Math.max(clock.now(), Date.parse(visit.promisedFor ?? visit.arrivedAt)), [0.1, 40]);
  for (const job of jobs) await move(making, job, "collected", technician);
  yield* settle(making, visit.id);
}

/**
 * What is said, and what is asked for. Mostly as it was; now and then another finish of the cover's usual range: no smoother for a ball that skids too far, no
 * duller for one that hooks too early. Nobody complains of a spare ball that it skids.
 */
function plannedFor({ dice, clock }: Making, ball: CustomerBall): Omit<Job, "ticket"> {
  const now = clock.now();
  const isSmoother = roughnessAt(ball, now, "track") < roughnessAt(ball, ball.finishedMs, "track");
  const said = dice.chance(0.5) || ball.job === "spare" ? "care" : isSmoother ? "tooSmooth" : "tooDull";
  const before = effectiveRaUm(ball.finish);
  const helps = COVERS[ball.cover].usual.filter((finish) => {
    const after = effectiveRaUm(finish);
    return said === "care" || (said === "tooSmooth" ? after >= before : after <= before);
  });
  const wanted = dice.chance(0.75) || helps.length === 0 ? ball.finish : dice.pick(helps);
  return { ball, said, wanted, plan: stagesFor(ball, wanted, now) };
}

/** At the counter: promised for when what waits and these balls are done. */
async function arrive({ things, clock, dice, by }: Making, shop: Furnished, customer: Customer, planned: readonly Omit<Job, "ticket">[]) {
  const stages = planned.map(({ plan }) => plan.stages.map(plannedOf));
  const { ballsPerHour } = await things.settings.get();
  const promisedFor = promiseFor({
    nowMs: clock.now(),
    zone: ZONE,
    openings: USUAL_OPENINGS,
    waitingSeconds: [...shop.waiting.values()].reduce((sum, seconds) => sum + seconds, 0),
    ownSeconds: stages.reduce((sum, of) => sum + benchSecondsOf(of, ballsPerHour), 0),
    restSeconds: Math.max(...stages.map((of) => restSecondsOf(of))),
  });
  const discount = dice.chance(0.1) ? { discountCents: 500, discountWhy: "Comes often." } : {};
  return things.visits.create({ bowlerId: customer.id, arrivedAt: clock.text(), promisedFor, currency: "USD", ...discount }, { by });
}

/** The bill is agreed on before the work: by the price list, and where that has nothing for it, free. */
async function charge({ things, by }: Making, shop: Furnished, visit: Visit, jobs: readonly Job[]): Promise<void> {
  const { ballsPerHour } = await things.settings.get();
  const charges = [];
  const free = [];
  for (const { ticket, ball } of jobs) {
    const prices = usualPrices(workIn(ticket.stages), shop.prices);
    if (prices === null) free.push({ ticketId: ticket.id, why: "Cleaned and checked only." });
    else charges.push(...prices.map((price) => lineAt(price, ball.name, ticket.id)));
    shop.waiting.set(ticket.id, benchSecondsOf(ticket.stages, ballsPerHour));
  }
  const discount = charges.length === 0 ? { discountCents: 0, discountWhy: "" } : {};
  await things.visits.change(visit.id, { charges, free, ...discount }, { by, expectedVersion: visit.version });
}

async function takeIn(making: Making, customer: Customer, visit: Visit, planned: Omit<Job, "ticket">): Promise<Job> {
  const { things, dice, by } = making;
  const { ball, said, wanted, plan } = planned;
  await countGames(making, ball);
  const ticket = await things.tickets.create(
    {
      visitId: visit.id,
      ballId: ball.id,
      bowlerId: customer.id,
      receivedAt: visit.arrivedAt,
      complaint: dice.pick(COMPLAINTS[said]),
      symptoms: [SYMPTOM_OF[said]],
      whatChanged: "only this one",
      finishBefore: finishText(ball.finish),
      finishAfter: finishText(wanted),
      stages: plan.stages.map(plannedOf),
      promisedFor: visit.promisedFor,
      ...(dice.chance(0.6) ? { planSure: dice.pick([0.55, 0.65, 0.75, 0.85, 0.92, 0.97]) } : {}),
    },
    { by },
  );
  await tellOfLastTime(making, ball, ticket.id);
  return { ...planned, ticket };
}

/** At the next visit most say whether the last work did what was said; surer plans did so more often. */
async function tellOfLastTime({ things, clock, dice, by }: Making, ball: CustomerBall, now: string): Promise<void> {
  const { items } = await things.tickets.list({ where: { ballId: ball.id }, limit: 2 });
  const last = items.find(({ id, state }) => id !== now && state === "collected");
  if (last === undefined || !dice.chance(0.7)) return;
  const held = 0.45 + 0.45 * (last.planSure ?? 0.5);
  const answer = dice.chance(held) ? "as said" : dice.chance(0.6) ? "partly" : "not";
  await things.tickets.change(last.id, { outcome: { at: clock.text(), answer } }, { by, expectedVersion: last.version });
}

function plannedOf(stage: Stage) {
  const { kind, abrasive, sideIds, cautions, sides } = stage;
  const planned = { kind, abrasive, sideIds: [...sideIds], cautions: [...cautions] };
  if (sides === 0) return { ...planned, force: null, way: null, secondsPerSide: null, sides: null };
  return { ...planned, force: stage.force, way: wayOf(stage), secondsPerSide: Math.round(stage.secondsPerSide), sides };
}

/** Balls of a visit are worked together where they have to lie: the oil comes out of all of them at once. */
async function* workOn(making: Making, shop: Furnished, technician: Technician, jobs: readonly Job[]): Times {
  const { clock, things } = making;
  for (const { ball, ticket } of jobs) await measure(making, shop, ball, ticket.id, "before");
  for (const round of [0, 1, 2, 3]) {
    const todo = jobs.flatMap((job) =>
      job.plan.stages.flatMap((stage, place) => (roundOf(job, place) === round ? [{ job, stage, place }] : [])),
    );
    // Oil comes out and a ball dries by itself; it is signed for afterwards.
    yield clock.now() + 1000 * Math.max(0, ...todo.map(({ stage }) => restSecondsOf([stage])));
    for (const { job, stage, place } of todo) {
      if (stage.kind === "check") await finished(making, shop, job);
      yield* doStage(making, shop, technician, job.ticket, place, stage);
      if (stage.kind === "extract") job.ball.extractedMs = clock.now();
    }
  }
  for (const job of jobs) {
    shop.waiting.delete(job.ticket.id);
    job.ticket = await things.tickets.get(job.ticket.id);
  }
}

/** Before the oil is drawn out, that, drying off, and what comes after. */
function roundOf({ plan: { stages } }: Job, place: number): number {
  const extract = stages.findIndex(({ kind }) => kind === "extract");
  const { kind } = stages[place];
  return extract === -1 || place < extract ? 0 : kind === "extract" ? 1 : kind === "dryOff" ? 2 : 3;
}

/** The surface is what was wanted, and is measured before it is signed for. */
async function finished(making: Making, shop: Furnished, { ball, wanted, ticket }: Job): Promise<void> {
  ball.finish = wanted;
  ball.finishedMs = making.clock.now();
  await measure(making, shop, ball, ticket.id, "after");
}

async function move({ things }: Making, job: Job, to: TicketState, technician: Technician): Promise<void> {
  job.ticket = await things.tickets.move(job.ticket.id, to, { by: technician.id, expectedVersion: job.ticket.version });
}

/** How often a regular pays a part now and the rest the next time. */
const PAYS_IN_PARTS = 0.05;

/** The bill is paid when the balls are collected; by some in two parts. */
async function* settle(making: Making, visitId: string): Times {
  const { things, clock, dice, by } = making;
  const visit = await things.visits.get(visitId);
  const method = dice.weighted([
    ["card", 6],
    ["cash", 4],
  ] as const);
  const { totalCents } = billOf(visit);
  const pay = (cents: number) =>
    things.payments.create({ visitId, at: clock.text(), kind: "payment", cents, currency: visit.currency, method }, { by });
  const now = dice.chance(PAYS_IN_PARTS) ? 1000 * Math.floor(totalCents / 2000) : totalCents;
  if (now > 0) await pay(now);
  if (now < totalCents) {
    yield someTime(dice, clock.now(), [6 * 24, 8 * 24]);
    await pay(totalCents - now);
  }
}
