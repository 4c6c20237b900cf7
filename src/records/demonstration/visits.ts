import { billOf } from "#contract/records/bill";
import type { Ticket } from "#contract/records/ticket";
import type { TicketState } from "#contract/records/ticketStates";
import type { Visit } from "#contract/records/visit";
import { COVERS } from "#engine/ball/covers";
import { type Finish, finishText } from "#engine/surface/finish";
import type { Stage, StagePlan } from "#engine/surface/stages";
import { doStage, measure, wayOf } from "./benchWork.ts";
import type { Customer, CustomerBall } from "./customers.ts";
import { type Furnished, PRICES, TAX_MILLIPERCENT, type Technician } from "./furnish.ts";
import { countGames } from "./games.ts";
import { COMPLAINTS } from "./invented.ts";
import type { Making, Times } from "./making.ts";
import { DAY, HOUR, MINUTE } from "./shopClock.ts";
import { roughnessAt, stagesFor, wantsExtraction } from "./surface.ts";

/** A ball's work in this visit. */
interface Job {
  readonly ball: CustomerBall;
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
  const visit = await arrive(making, customer, balls);
  const jobs: Job[] = [];
  for (const ball of balls) jobs.push(await takeIn(making, customer, visit, ball));
  const technician = dice.pick(shop.technicians);
  const startMs = arrivedMs + dice.whole(2, 20) * HOUR;
  if (dice.chance(ASKED_FIRST)) {
    yield arrivedMs + HOUR;
    for (const job of jobs) await move(making, job, "waiting for approval", technician);
    yield startMs + dice.whole(4, 30) * HOUR;
  } else yield startMs;
  for (const job of jobs) yield* workOn(making, shop, technician, job);
  yield Math.max(clock.now() + HOUR, arrivedMs + dice.whole(24, 70) * HOUR);
  for (const job of jobs) await move(making, job, "collected", technician);
  await settle(making, visit.id);
}

/** At the counter: the bill is agreed on before the work. */
function arrive({ things, clock, dice, by }: Making, customer: Customer, balls: readonly CustomerBall[]): Promise<Visit> {
  const now = clock.now();
  const charges = balls.flatMap((ball) => [
    charge("Refresh", PRICES.refresh),
    ...(ball.finish.polished ? [charge("Polish", PRICES.polish)] : []),
    ...(wantsExtraction(ball, now) ? [charge("Oil extraction", PRICES.extraction)] : []),
  ]);
  const promisedFor = new Date(now + dice.whole(1, 3) * DAY).toISOString();
  const discount = dice.chance(0.1) ? { discountCents: 500, discountWhy: "Comes often." } : {};
  return things.visits.create(
    { bowlerId: customer.id, arrivedAt: clock.text(), promisedFor, currency: "USD", charges, ...discount },
    { by },
  );
}

function charge(what: string, eachCents: number) {
  return { what, eachCents, taxMillipercent: TAX_MILLIPERCENT };
}

async function takeIn(making: Making, customer: Customer, visit: Visit, ball: CustomerBall): Promise<Job> {
  const { things, clock, dice, by } = making;
  const now = clock.now();
  // Mostly as it was; now and then a step to another finish of the cover's usual range.
  const wanted = dice.chance(0.75) ? ball.finish : dice.pick(COVERS[ball.cover].usual);
  const plan = stagesFor(ball, wanted, now);
  await countGames(making, ball);
  const isSmoother = roughnessAt(ball, now, "track") < roughnessAt(ball, ball.finishedMs, "track");
  const said = dice.chance(0.5) ? "care" : isSmoother ? "tooSmooth" : "tooDull";
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
  return { ball, wanted, plan, ticket };
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
  if (sides === 0) return planned;
  return { ...planned, force: stage.force, way: wayOf(stage), secondsPerSide: Math.round(stage.secondsPerSide), sides };
}

async function* workOn(making: Making, shop: Furnished, technician: Technician, job: Job): Times {
  const { clock } = making;
  const { ball, wanted, plan } = job;
  await move(making, job, "in work", technician);
  await measure(making, shop, ball, job.ticket.id, "before");
  for (const [i, stage] of plan.stages.entries()) {
    yield* doStage(making, shop, technician, job.ticket, i, stage);
    if (stage.kind !== "extract") continue;
    ball.extractedMs = clock.now();
    await move(making, job, "drying", technician);
    yield clock.now() + 12 * HOUR;
    await move(making, job, "in work", technician);
  }
  ball.finish = wanted;
  ball.finishedMs = clock.now();
  await measure(making, shop, ball, job.ticket.id, "after");
  yield clock.now() + 5 * MINUTE;
  await move(making, job, "ready", technician);
}

async function move({ things }: Making, job: Job, to: TicketState, technician: Technician): Promise<void> {
  job.ticket = await things.tickets.move(job.ticket.id, to, { by: technician.id, expectedVersion: job.ticket.version });
}

/** The bill is paid when the balls are collected. */
async function settle({ things, clock, dice, by }: Making, visitId: string): Promise<void> {
  const visit = await things.visits.get(visitId);
  const method = dice.weighted([
    ["card", 6],
    ["cash", 4],
  ] as const);
  const { totalCents: cents } = billOf(visit);
  await things.payments.create({ visitId, at: clock.text(), kind: "payment", cents, currency: visit.currency, method }, { by });
  await things.visits.change(visitId, { state: "closed" }, { by, expectedVersion: visit.version });
}
