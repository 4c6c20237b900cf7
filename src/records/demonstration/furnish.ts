import type { Price } from "#contract/records/money";
import type { PricedWork } from "#contract/records/pricedWork";
import { WORK_NAMES } from "#contract/records/pricedWork";
import { ABRASIVES, type AbrasiveId, LEVELS_A_PLUG, POLISHES } from "#engine/surface/abrasives";
import { effectiveRaUm } from "#engine/surface/finish";
import { MIDDLE_NUMBER, PADS } from "#engine/surface/pads";
import { HOUSE_NAMES, PEOPLE, SHOP_NAME } from "./invented.ts";
import type { Making } from "./making.ts";
import { ZONE } from "./openHours.ts";
import { dayOf } from "./shopClock.ts";
import { readingUm } from "./surface.ts";

export interface Technician {
  readonly id: string;
  readonly initials: string;
  /** Until when the hands are at another ball, ms. */
  busyUntilMs: number;
}

export interface Place {
  readonly houseId: string;
  readonly laneIds: readonly string[];
  readonly patternId: string;
  /** Name of the engine's pattern that lies there. */
  readonly pattern: string;
}

/** The shop before its first customer. */
export interface Furnished {
  readonly technicians: readonly Technician[];
  readonly prices: readonly Price[];
  /** Seconds at the bench that each ticket still wants, by its id: what a promise has to wait for. */
  readonly waiting: Map<string, number>;
  readonly places: readonly Place[];
  /** Stock items by abrasive. */
  readonly stock: ReadonlyMap<AbrasiveId, string>;
  readonly cleanerId: string;
  readonly referenceBallId: string;
  /** Its roughness, µm effective. */
  readonly referenceUm: number;
}

/** Of about what such work costs; common practice. */
const PRICES: Readonly<Partial<Record<PricedWork, { readonly name: string; readonly eachCents: number }>>> = {
  refresh: { name: WORK_NAMES.refresh, eachCents: 2000 },
  resurface: { name: WORK_NAMES.resurface, eachCents: 3500 },
  polish: { name: WORK_NAMES.polish, eachCents: 500 },
  extraction: { name: WORK_NAMES.extraction, eachCents: 2500 },
};
const TAX_MILLIPERCENT = 8250;
const STOCKED: readonly AbrasiveId[] = [
  ...PADS.filter(({ inMostShops }) => inMostShops).map(({ number }): AbrasiveId => `pad-${number}`),
  LEVELS_A_PLUG,
  POLISHES,
];

export async function furnish(making: Making): Promise<Furnished> {
  const { things, by, clock, beginMs } = making;
  clock.at(beginMs);
  const { version } = await things.settings.get();
  await things.settings.change(
    { shopName: SHOP_NAME, zone: ZONE, currency: "USD", taxMillipercent: TAX_MILLIPERCENT, data: "invented" },
    { by, expectedVersion: version },
  );
  const referenceUm = effectiveRaUm({ number: MIDDLE_NUMBER, polished: false });
  const referenceBall = await things.referenceBalls.create(
    { name: `Reference ${MIDDLE_NUMBER}`, finish: `${MIDDLE_NUMBER}`, raUm: rounded(readingUm(referenceUm)), measuredAt: clock.text() },
    { by },
  );
  return {
    technicians: await technicians(making),
    prices: await prices(making),
    waiting: new Map(),
    places: await places(making),
    ...(await stock(making)),
    referenceBallId: referenceBall.id,
    referenceUm,
  };
}

async function prices({ things, by, beginMs }: Making): Promise<Price[]> {
  const made: Price[] = [];
  const usual = { currency: "USD", taxMillipercent: TAX_MILLIPERCENT, from: dayOf(beginMs) };
  for (const [work, { name, eachCents }] of Object.entries(PRICES))
    made.push(await things.prices.create({ name, work: work as PricedWork, eachCents, ...usual }, { by }));
  return made;
}

/** The first person is there from the beginning; the others are added. */
async function technicians({ things, by }: Making): Promise<Technician[]> {
  const first = await things.people.get(by);
  await things.people.change(by, PEOPLE[0], { by, expectedVersion: first.version });
  const others = [];
  for (const person of PEOPLE.slice(1)) others.push(await things.people.create(person, { by }));
  return [{ id: by, initials: PEOPLE[0].initials }, ...others].map(({ id, initials }) => ({ id, initials, busyUntilMs: 0 }));
}

async function places({ things, by }: Making): Promise<Place[]> {
  const made: Place[] = [];
  for (const [i, pattern] of (["medium-41", "light-38"] as const).entries()) {
    const house = await things.houses.create({ name: HOUSE_NAMES[i], notes: "Invented." }, { by });
    const laneIds: string[] = [];
    for (let number = 1; number <= 8; number++)
      laneIds.push((await things.lanes.create({ houseId: house.id, number, surface: "synthetic" }, { by })).id);
    const kept = await things.patterns.create({ name: `House pattern, ${HOUSE_NAMES[i]}`, houseId: house.id, oil: { pattern } }, { by });
    made.push({ houseId: house.id, laneIds, patternId: kept.id, pattern });
  }
  return made;
}

async function stock({ things, by, clock }: Making): Promise<Pick<Furnished, "stock" | "cleanerId">> {
  const items = new Map<AbrasiveId, string>();
  const at = clock.text();
  for (const abrasive of STOCKED) {
    const { kind, grade } = ABRASIVES[abrasive];
    const item = await things.stockItems.create(
      {
        name: stockName(abrasive),
        kind: kind === "foamPad" ? "pad" : kind === "wetPaper" ? "wet paper" : "polish",
        number: grade?.number ?? null,
        unit: kind === "cuttingPolish" ? "mL" : "uses",
        reorderAt: 40,
      },
      { by },
    );
    await things.stockMovements.create({ stockItemId: item.id, at, change: 4000, why: "delivered" }, { by });
    items.set(abrasive, item.id);
  }
  const cleaner = await things.stockItems.create({ name: "Cleaner", kind: "cleaner", unit: "mL", reorderAt: 500 }, { by });
  await things.stockMovements.create({ stockItemId: cleaner.id, at, change: 20_000, why: "delivered" }, { by });
  return { stock: items, cleanerId: cleaner.id };
}

/** `pad-2000` as `Pad 2000`. */
export function stockName(abrasive: AbrasiveId): string {
  const words = abrasive.replaceAll("-", " ");
  return words[0].toUpperCase() + words.slice(1);
}

/** Three figures are what a tester shows. */
export function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
