import type { Ticket } from "#contract/records/ticket";
import type { Stage } from "#engine/surface/stages";
import type { CustomerBall } from "./customers.ts";
import { type Furnished, rounded, type Technician } from "./furnish.ts";
import type { Making, Times } from "./making.ts";
import { beginOf } from "./openHours.ts";
import { DAY, MINUTE } from "./shopClock.ts";
import { readingUm, roughnessAt } from "./surface.ts";

/** How a stage is worked in this shop. */
export function wayOf({ abrasive, wet }: Stage) {
  if (abrasive === null) return null;
  return wet ? "spinner, wet" : "spinner, dry";
}

const SETTING_UP = 3 * MINUTE;
/** A technician counts seconds to about one and a half. */
const SECONDS_SCATTER = 1.5;

/** A stage is done and signed, and what it used has left the stock. */
export async function* doStage(
  making: Making,
  shop: Furnished,
  technician: Technician,
  ticket: Pick<Ticket, "id" | "stages" | "revision">,
  place: number,
  stage: Stage,
): Times {
  const { things, clock, dice } = making;
  const sideSeconds = Array.from({ length: stage.sides }, () => Math.round(stage.secondsPerSide + dice.normal(0, SECONDS_SCATTER)));
  const lastsMs = SETTING_UP + 1000 * sideSeconds.reduce((sum, seconds) => sum + seconds, 0);
  const startedMs = beginOf(Math.max(clock.now(), technician.busyUntilMs), lastsMs);
  technician.busyUntilMs = startedMs + lastsMs;
  yield technician.busyUntilMs;
  await things.stagesDone.create(
    {
      ticketId: ticket.id,
      stageId: ticket.stages[place].id,
      revision: ticket.revision,
      kind: stage.kind,
      sidesDone: [...stage.sideIds],
      personId: technician.id,
      initials: technician.initials,
      startedAt: new Date(startedMs).toISOString(),
      doneAt: clock.text(),
      abrasive: stage.abrasive,
      way: wayOf(stage),
      sideSeconds,
      used: usedIn(stage, shop),
    },
    { by: technician.id },
  );
}

/** Millilitres of cleaner and polish, one use of a pad. */
function usedIn({ kind, abrasive }: Stage, shop: Furnished) {
  const stockItemId = kind === "clean" ? shop.cleanerId : abrasive === null ? undefined : shop.stock.get(abrasive);
  return stockItemId === undefined ? [] : [{ stockItemId, quantity: kind === "clean" || kind === "polish" ? 10 : 1 }];
}

/** A reading scatters by place, tester and hand: about 8 %; common practice. */
const SCATTER = 0.08;
/** Less than this apart, as a factor on Ra, two surfaces look and feel alike; common practice. */
const ALIKE = 1.3;

/** Track and off track, by tester or against the reference ball. */
export async function measure(
  making: Making,
  shop: Furnished,
  ball: CustomerBall,
  ticketId: string,
  when: "before" | "after",
): Promise<void> {
  const { things, clock, dice, by, beginMs } = making;
  const ms = clock.now();
  // The shop bought its tester after the first year; until then balls were held against the reference ball.
  const hasTester = ms > beginMs + 365 * DAY;
  for (const place of ["track", "off track"] as const) {
    const effectiveUm = roughnessAt(ball, ms, place === "track" ? "track" : "offTrack") * Math.exp(dice.normal(0, SCATTER));
    const seen = hasTester ? byTester(effectiveUm) : byReference(effectiveUm, shop);
    await things.readings.create({ ballId: ball.id, ticketId, at: clock.text(), when, place, ...seen }, { by });
  }
}

function byTester(effectiveUm: number) {
  return { how: "tester", raUm: rounded(readingUm(effectiveUm)) } as const;
}

function byReference(um: number, { referenceUm, referenceBallId }: Furnished) {
  const comparison = um > ALIKE * referenceUm ? "duller" : um < referenceUm / ALIKE ? "smoother" : "the same";
  return { how: "reference ball", comparison, referenceBallId } as const;
}
