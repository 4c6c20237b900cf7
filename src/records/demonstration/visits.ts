import { billOf } from "#contract/records/money";
import type { Visit } from "#contract/records/visit";
import { COVERS } from "#engine/ball/covers";
import { type Finish, finishText } from "#engine/surface/finish";
import type { Stage } from "#engine/surface/stages";
import type { Customer, CustomerBall } from "./customers.ts";
import { type Furnished, PRICES, rounded, stockName, TAX_PERMILLE, type Technician } from "./furnish.ts";
import { COMPLAINTS } from "./invented.ts";
import type { Making } from "./making.ts";
import { DAY, HOUR, MINUTE } from "./shopClock.ts";
import { readingUm, roughnessAt, stagesFor, wantsExtraction } from "./surface.ts";

/** Of the last days' visits some are still at the bench, so that the queue holds something. */
export type Progress = "received" | "waiting for approval" | "in work" | "drying" | "ready" | "collected";

/** One visit of a bowler with the balls that are due. */
export async function makeVisit(
  making: Making,
  shop: Furnished,
  customer: Customer,
  balls: readonly CustomerBall[],
  arrivedMs: number,
  progress: Progress,
): Promise<void> {
  const { things, clock, dice, by } = making;
  const promisedFor = new Date(arrivedMs + dice.whole(1, 3) * DAY).toISOString();
  const jobs = balls.map((ball) => ({ ball, wanted: wantedFinish(making, ball), extract: wantsExtraction(ball, arrivedMs) }));
  const arrivedAt = clock.at(arrivedMs);
  const charges = jobs.flatMap(({ wanted, extract }) => [
    charge("Refresh", PRICES.refresh),
    ...(wanted.polished ? [charge("Polish", PRICES.polish)] : []),
    ...(extract ? [charge("Oil extraction", PRICES.extraction)] : []),
  ]);
  const isRegular = dice.chance(0.1);
  const visit = await things.visits.create(
    {
      bowlerId: customer.id,
      arrivedAt,
      promisedFor,
      currency: "USD",
      charges,
      ...(isRegular ? { discountCents: 500, discountWhy: "Comes often." } : {}),
    },
    { by },
  );
  for (const { ball, wanted } of jobs) await makeTicket(making, shop, customer, visit, ball, wanted, progress);
  if (progress === "collected") await settle(making, visit);
}

function charge(what: string, eachCents: number) {
  return { what, eachCents, taxPermille: TAX_PERMILLE };
}

/** Mostly as it was; now and then a step to another finish of the cover's usual range. */
function wantedFinish({ dice }: Making, { cover, finish }: CustomerBall): Finish {
  return dice.chance(0.75) ? finish : dice.pick(COVERS[cover].usual);
}

async function makeTicket(
  making: Making,
  shop: Furnished,
  customer: Customer,
  visit: Visit,
  ball: CustomerBall,
  wanted: Finish,
  progress: Progress,
): Promise<void> {
  const { things, clock, dice, by } = making;
  const arrivedMs = Date.parse(visit.arrivedAt);
  const plan = stagesFor(ball, wanted, arrivedMs);
  const smoother = roughnessAt(ball, arrivedMs, "track") < roughnessAt(ball, ball.finishedMs, "track");
  let ticket = await things.tickets.create(
    {
      visitId: visit.id,
      ballId: ball.id,
      bowlerId: customer.id,
      receivedAt: visit.arrivedAt,
      complaint: dice.pick(dice.chance(0.5) ? COMPLAINTS.care : smoother ? COMPLAINTS.tooSmooth : COMPLAINTS.tooDull),
      whatChanged: "only this one",
      finishBefore: finishText(ball.finish),
      finishAfter: finishText(wanted),
      stages: plan.stages.map((stage) => ({
        what: whatOf(stage),
        abrasive: stage.abrasive,
        way: stage.wet ? "wet" : "dry",
        secondsPerSide: Math.round(stage.secondsPerSide),
        sides: stage.sides > 0 ? stage.sides : null,
      })),
      promisedFor: visit.promisedFor,
    },
    { by },
  );
  const move = async (to: Progress, ms: number): Promise<void> => {
    clock.at(ms);
    ticket = await things.tickets.move(ticket.id, to, { by: technician.id, expectedVersion: ticket.version });
  };
  const technician = dice.pick(shop.technicians);
  const startMs = arrivedMs + dice.whole(2, 20) * HOUR;
  if (progress === "received") return;
  if (progress === "waiting for approval") return move(progress, arrivedMs + HOUR);
  await move("in work", startMs);
  await measure(making, ball, ticket.id, startMs, "before", shop);
  const share = progress === "in work" ? 0.5 : 1;
  const stages = plan.stages.slice(0, Math.ceil(share * plan.stages.length));
  const doneMs = await work(making, shop, technician, ticket.id, stages, startMs);
  if (progress === "in work") return;
  if (progress === "drying") return move(progress, doneMs);
  if (stages.some(({ kind }) => kind === "extract")) ball.extractedMs = doneMs;
  ball.finish = wanted;
  ball.finishedMs = doneMs;
  await measure(making, ball, ticket.id, doneMs, "after", shop);
  await move("ready", doneMs + 10 * MINUTE);
  if (progress === "collected") await move("collected", Math.max(doneMs + HOUR, arrivedMs + dice.whole(24, 70) * HOUR));
}

const WHAT: Readonly<Record<Stage["kind"], string>> = {
  clean: "Clean",
  open: "Open the surface",
  extract: "Draw the oil out",
  dryOff: "Let it dry off",
  plug: "Cut the plug down",
  cut: "Sand",
  polish: "Polish",
  check: "Look it over and measure",
};

function whatOf(stage: Stage): string {
  return stage.abrasive === null ? WHAT[stage.kind] : `${WHAT[stage.kind]}: ${stockName(stage.abrasive)}`;
}

/** The stages one after the other, signed; gives when the last was done, ms. */
async function work(
  making: Making,
  shop: Furnished,
  technician: Technician,
  ticketId: string,
  stages: readonly Stage[],
  startMs: number,
): Promise<number> {
  const { things, clock, dice } = making;
  let ms = startMs + 5 * MINUTE;
  for (const stage of stages) {
    const startedAt = new Date(ms).toISOString();
    const sideSeconds = Array.from({ length: stage.sides }, () => Math.round(stage.secondsPerSide + dice.normal(0, 1.5)));
    ms += 3 * MINUTE + 1000 * sideSeconds.reduce((sum, seconds) => sum + seconds, 0);
    const stockItemId = stage.kind === "clean" ? shop.cleanerId : stage.abrasive === null ? undefined : shop.stock.get(stage.abrasive);
    await things.stagesDone.create(
      {
        ticketId,
        personId: technician.id,
        initials: technician.initials,
        startedAt,
        doneAt: clock.at(ms),
        what: whatOf(stage),
        abrasive: stage.abrasive,
        way: stage.abrasive === null ? null : stage.wet ? "spinner, wet" : "spinner, dry",
        sideSeconds,
        used: stockItemId === undefined ? [] : [{ stockItemId, quantity: stage.kind === "clean" || stage.kind === "polish" ? 10 : 1 }],
      },
      { by: technician.id },
    );
  }
  return ms;
}

/** A reading scatters by place, tester and hand: about 8 %; common practice. */
const SCATTER = 0.08;

/** Less than this apart, as a factor on Ra, two surfaces look and feel alike; common practice. */
const ALIKE = 1.3;

async function measure(
  making: Making,
  ball: CustomerBall,
  ticketId: string,
  ms: number,
  when: "before" | "after",
  shop: Furnished,
): Promise<void> {
  const { things, dice, by, beginMs } = making;
  const at = new Date(ms).toISOString();
  // The shop bought its tester after the first year; until then balls were held against the reference ball.
  const hasTester = ms > beginMs + 365 * DAY;
  for (const place of ["track", "off track"] as const) {
    const effectiveUm = roughnessAt(ball, ms, place === "track" ? "track" : "offTrack") * Math.exp(dice.normal(0, SCATTER));
    const read = hasTester
      ? ({ how: "tester", raUm: rounded(readingUm(effectiveUm)) } as const)
      : ({
          how: "reference ball",
          comparison: comparedWith(effectiveUm, shop.referenceUm),
          referenceBallId: shop.referenceBallId,
        } as const);
    await things.readings.create({ ballId: ball.id, ticketId, at, when, place, ...read }, { by });
  }
}

function comparedWith(um: number, referenceUm: number): "duller" | "the same" | "smoother" {
  if (um > ALIKE * referenceUm) return "duller";
  return um < referenceUm / ALIKE ? "smoother" : "the same";
}

/** The bill is paid when the last ball is collected. */
async function settle({ things, clock, dice, by }: Making, { id }: Visit): Promise<void> {
  const visit = await things.visits.get(id);
  await things.payments.create(
    {
      visitId: id,
      at: new Date(clock.now()).toISOString(),
      kind: "payment",
      cents: billOf(visit).totalCents,
      currency: visit.currency,
      method: dice.weighted([
        ["card", 6],
        ["cash", 4],
      ]),
    },
    { by },
  );
  await things.visits.change(id, { state: "closed" }, { by, expectedVersion: visit.version });
}
