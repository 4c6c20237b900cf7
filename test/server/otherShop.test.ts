import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { THING_KINDS } from "#contract/records/auditEntry";
import { accessRoutes } from "#contract/routes/access";
import { API } from "#contract/routes/api";
import { paramNames, type Route } from "#contract/routes/route";
import { TABLE_RULES } from "#records/database/tableRules";
import type { Db } from "#records/database/tables";
import { PNG } from "../records/pictures.ts";
import { testPostgres } from "../records/postgres.ts";
import { databaseOf, onTheCounter, type TestShop, twoShops } from "../records/shop.ts";
import { type ShopServer, shopServer } from "./shopServer.ts";
import { answerOf, type CheckedRequest } from "./wholeAnswer.ts";

/*
 * Two shops in one database. Everything there is to ask of the server is asked of East's, with every id of West's: nothing of West is read, nothing of
 * it is changed, and nothing of East comes to hang on it. Which routes there are, and what they take, comes from the table of routes.
 */

type Name = keyof typeof API;
type Ids = Awaited<ReturnType<typeof fill>>;
/** Routes that take a body: the compiler wants an entry of `BODIES` for each. */
type WithBody = Exclude<{ [N in Name]: (typeof API)[N] extends { readonly body: unknown } ? N : never }[Name], keyof typeof accessRoutes>;

const AT = "2026-05-31T18:00:00.000Z";
/** Stands in everything that West wrote of its own. */
const MARK = "Westward";

/** Bowlers and balls are everybody's; these two do reach into every shop, on purpose: a person asks one shop and means all. */
const CROSSING: ReadonlySet<string> = new Set(["exportPersonalData", "erasePersonalData"]);
/** What gives, changes or ends a way in has a test of its own: with the first password of East nobody would be let in here without one. */
const isOfDoor = (name: string): boolean => name in accessRoutes && API[name as Name].method !== "get";

/** Bodies that would be taken, were the ids in them East's: each hangs something on West. */
const BODIES: Readonly<Record<WithBody, (west: Ids, mine: Ids) => readonly unknown[]>> = {
  createPerson: () => [{ name: "Wren", initials: "W" }],
  changePerson: () => [{ initials: "X" }],
  createBowler: () => [{ name: "Ana Plover" }],
  changeBowler: () => [{ notes: "Seen by East" }],
  createBall: () => [{ name: "Teal", cover: "solid" }],
  changeBall: () => [{ notes: "Seen by East" }],
  createReading: (west, mine) => {
    const reading = { ballId: mine.balls, at: AT, when: "before", place: "track", how: "tester", raUm: 0.4 };
    return [
      { ...reading, ticketId: west.tickets },
      { ...reading, referenceBallId: west.referenceBalls },
      { ...reading, profileFileId: west.profileFiles },
    ];
  },
  createReferenceBall: () => [{ name: "2000" }],
  changeReferenceBall: () => [{ raUm: 0.5 }],
  createPhoto: () => [new Uint8Array(PNG)],
  changePhoto: (west) => [{ note: "Mine now" }, { ticketId: west.tickets }],
  createProfileFile: () => [new TextEncoder().encode("profile")],
  changeProfileFile: (west) => [{ note: "Mine now" }, { ticketId: west.tickets }],
  createVisit: (west) => [{ bowlerId: west.bowlers, arrivedAt: AT, currency: "USD" }],
  changeVisit: () => [{ note: "Mine now" }],
  createTicket: (west, mine) => [
    { visitId: west.visits, ballId: mine.balls, receivedAt: AT },
    { visitId: mine.visits, ballId: west.balls, receivedAt: AT, reworkOf: west.tickets },
  ],
  changeTicket: (west) => [{ complaint: "Mine now" }, { reworkOf: west.tickets }, { visitId: west.visits }],
  moveTicket: () => [{ to: "in work" }],
  keepPlan: (west) => [{ planId: west.tickets }],
  createStageDone: (west, mine) => {
    const stage = { ticketId: mine.tickets, personId: mine.people, initials: "T", doneAt: AT, what: "2000" };
    return [
      { ...stage, ticketId: west.tickets },
      { ...stage, personId: west.people },
      { ...stage, used: [{ stockItemId: west.stockItems, quantity: 1 }] },
    ];
  },
  keepLaneSide: (west) => [
    {
      ballId: west.balls,
      way: "hand, wet",
      finish: "2000",
      what: "2000",
      doneAt: AT,
      whereTo: "handed back",
      used: [{ stockItemId: west.stockItems, quantity: 1 }],
    },
  ],
  createPrice: () => [{ name: "Refresh", eachCents: 1, currency: "USD", from: "2026-01-01" }],
  changePrice: () => [{ eachCents: 1 }],
  createPayment: (west, mine) => {
    const payment = { visitId: west.visits, at: AT, kind: "payment", cents: 1, currency: "USD", method: "cash" };
    return [payment, { ...payment, visitId: mine.visits, kind: "refund", refundOf: west.payments }];
  },
  createPrepaid: (west, mine) => [
    { bowlerId: west.bowlers, at: AT, change: -1 },
    { bowlerId: mine.bowlers, visitId: west.visits, at: AT, change: 5 },
  ],
  createStockItem: () => [{ name: "Pad", kind: "pad", unit: "uses" }],
  changeStockItem: () => [{ reorderAt: 1 }],
  createStockMovement: (west, mine) => [
    { stockItemId: west.stockItems, at: AT, change: -1, why: "used" },
    { stockItemId: mine.stockItems, at: AT, change: -1, why: "used", stageDoneId: west.stagesDone },
  ],
  createHouse: () => [{ name: "Bowl" }],
  changeHouse: () => [{ notes: "Mine now" }],
  createLane: (west) => [{ houseId: west.houses, number: 3 }],
  changeLane: (west) => [{ notes: "Mine now" }, { houseId: west.houses }],
  createPattern: (west) => [{ houseId: west.houses, name: "P", oil: { pattern: "medium-41" } }],
  changePattern: (west) => [{ notes: "Mine now" }, { houseId: west.houses }],
  createShotNote: (west) => [
    { laneId: west.lanes, at: AT },
    { houseId: west.houses, at: AT },
    { patternId: west.patterns, at: AT },
    { ticketId: west.tickets, at: AT },
  ],
  changeShotNote: (west) => [{ note: "Mine now" }, { laneId: west.lanes }],
  changeSettings: () => [{ shopName: "East again" }],
  mendUnreadable: (west) => [
    {
      document: { visitId: west.visits, ballId: west.balls, receivedAt: AT, state: "received", been: [], readyAt: null, collectedAt: null },
    },
  ],
  previewImport: () => [{ kind: "bowlers", csv: "name\nAna Plover\n" }],
  applyImport: () => [{ kind: "bowlers", csv: "name\nTove Dunlin\n" }],
  askPlan: () => [{ gritwright: 1 }],
};

/** A plan of the test would take minutes; without one none is kept. */
const NEVER_TAKEN: ReadonlySet<string> = new Set(["askPlan", "keepPlan"]);

const postgres = await testPostgres();
afterAll(() => postgres?.stop());
const ENGINES: readonly (readonly [string, () => Promise<{ west: TestShop; east: TestShop }>])[] = [
  ["SQLite", () => twoShops()],
  ...(postgres === null ? [] : ([["PostgreSQL", async () => twoShops(await postgres.newDatabase())]] as const)),
];

describe.each(ENGINES)("on %s, another shop's server", (_, open) => {
  let [west, east]: TestShop[] = [];
  let server: ShopServer;
  let db: Db;
  let theirs: Ids;
  let mine: Ids;
  let before: string;
  /** Ids of everything that is West's alone. */
  let own: readonly string[];

  beforeAll(async () => {
    ({ west, east } = await open());
    theirs = await fill(west, MARK);
    mine = await fill(east, "Eastward");
    db = databaseOf(west.parts);
    server = await shopServer({ shop: east });
    before = JSON.stringify(await ownRows(db, theirs.settings));
    own = (await ownRows(db, theirs.settings)).map(({ id }) => String(id)).filter((id) => id !== theirs.settings);
  }, 60_000);
  afterAll(async () => {
    await db.destroy();
    await server.close();
    await east.end();
    await west.end();
  });

  /** Asks, and holds what comes back to the walls between shops. */
  async function asked(name: Name, options: CheckedRequest): Promise<number> {
    const id = options.params?.id ?? mine.settings;
    const row = THING_KINDS.includes(kindOf(API[name]) as never)
      ? await db
          .selectFrom(kindOf(API[name]) as "photos")
          .select("version")
          .where("id", "=", id)
          .executeTakeFirst()
      : undefined;
    // The version as it is: nothing but the wall between shops refuses.
    const { status, text } = await answerOf(server, API[name], { ...options, headers: { "if-match": `"${row?.version ?? 1}"` } });
    const said = JSON.stringify(options);
    expect(text, `${name} ${said}`).not.toContain(MARK);
    // What was asked with may be repeated in a refusal.
    for (const one of own.filter((other) => !said.includes(other))) expect(text.includes(one), `${one} from ${name} ${said}`).toBe(false);
    return status;
  }

  /** Nothing of West has changed, and nothing of East has anything of West in it. */
  async function wallsHold(name: string): Promise<void> {
    expect(JSON.stringify(await ownRows(db, theirs.settings)), `West after ${name}`).toBe(before);
    const rows = JSON.stringify(await ownRows(db, mine.settings));
    for (const id of own) expect(rows.includes(id), `${id} with East after ${name}`).toBe(false);
  }

  // Otherwise a body that nobody could ever send would pass for a wall.
  test.each(Object.keys(BODIES).filter((name) => !NEVER_TAKEN.has(name)) as WithBody[])("%s takes the same of East's own", async (name) => {
    const route: Route = API[name];
    const [param] = paramNames(route.path);
    const query = { ...mustOf(route), ...(route.query === undefined ? {} : { ballId: mine.balls }) };
    for (const body of BODIES[name](mine, mine)) {
      const status = await asked(name, { params: param === undefined ? {} : { [param]: mine[kindOf(route)] }, query, body });
      expect(status, JSON.stringify(body)).toBeLessThan(300);
    }
    await wallsHold(name);
  });

  test.each(Object.keys(API).filter((name) => !CROSSING.has(name) && !isOfDoor(name)) as Name[])(
    "%s reads and writes nothing of it",
    async (name) => {
      const route: Route = API[name];
      const bodies = route.body === undefined ? [undefined] : BODIES[name as WithBody](theirs, mine);
      const [param] = paramNames(route.path);
      const paths = param === undefined ? [{}] : [...Object.values(theirs), mine[kindOf(route)]].map((id) => ({ [param]: id }));
      for (const query of queriesOf(route, theirs))
        for (const params of paths)
          for (const body of bodies) {
            const status = await asked(name, { params, query, ...(body === undefined ? {} : { body }) });
            const id = Object.values(params)[0];
            if (own.includes(id)) expect([404, 409, 422], `${name} ${id}`).toContain(status);
          }
      await wallsHold(name);
    },
  );

  test("nobody of the other shop acts here", async () => {
    const headers = { "x-gritwright-person": theirs.people };
    const { status } = await answerOf(server, API.createHouse, { body: { name: "Bowl" }, headers });
    expect(status).toBeGreaterThanOrEqual(400);
    expect(
      (await db.selectFrom("audit").selectAll().where("shopId", "=", mine.settings).where("by", "=", theirs.people).execute()).length,
    ).toBe(0);
  });

  test("what all share is there: bowlers, balls, photos of balls; a photo is changed by its own shop alone", async () => {
    for (const name of ["getBowler", "getBall", "photoBytes"] as const) {
      const id = { getBowler: theirs.bowlers, getBall: theirs.balls, photoBytes: theirs.photosOfBall }[name];
      expect((await answerOf(server, API[name], { params: { id } })).status, name).toBe(200);
    }
    const change = { params: { id: theirs.photosOfBall }, body: { note: "Mine now" } };
    expect((await answerOf(server, API.changePhoto, change)).status).toBe(422);
    expect((await answerOf(server, API.removePhoto, { params: { id: theirs.photosOfBall } })).status).toBe(422);
    expect((await west.records.photos.get(theirs.photosOfBall)).note).toBe("");
  });

  test("a way in is its own shop's: it opens nothing here, and is not given, changed, closed or ended from here", async () => {
    const { accounts } = west.records;
    const password = "an invented long phrase";
    await accounts.open(theirs.people, { signInName: "west", role: "owner", password }, west.by);
    const begun = await accounts.signIn({ signInName: "west", password, address: "127.0.0.1" });
    if (begun.kind !== "in") throw new Error(begun.kind);
    const status = async (name: Name, asked: CheckedRequest) => (await answerOf(server, API[name], asked)).status;
    expect(await status("signIn", { body: { signInName: "west", password } })).toBe(403);
    const params = { id: theirs.people };
    expect(await status("openSignIn", { params, body: { signInName: "east", role: "owner", password } })).toBe(404);
    expect(await status("changeSignIn", { params, body: { password: "another invented phrase" } })).toBe(404);
    expect(await status("closeSignIn", { params })).toBe(404);
    expect(await status("endSession", { params: { id: begun.session.id } })).toBe(404);
    expect((await answerOf(server, API.listSignIns, {})).text).not.toContain("west");
    expect((await answerOf(server, API.listSessions, {})).text).not.toContain(begun.session.id);
    expect(await accounts.isLive(begun.session.id)).toBe(true);
    expect(await accounts.doubt(theirs.people, password)).toBeNull();
  });

  // The last test: nothing of West's bowler is left after it.
  test("a bowler's data are handed out from every shop, and erased in every shop", async () => {
    const params = { id: theirs.bowlers };
    const handedOut = await answerOf(server, API.exportPersonalData, { params });
    expect(handedOut.text).toContain(`${MARK} complaint`);
    expect((await answerOf(server, API.erasePersonalData, { params })).status).toBe(200);
    expect(await west.records.tickets.get(theirs.tickets)).toMatchObject({ complaint: "" });
    expect((await west.records.shotNotes.list()).items).toEqual([]);
  });
});

/** One thing of every kind, each hanging on the others, with a mark in what is the shop's own. */
async function fill(shop: TestShop, mark: string) {
  const { records, by } = shop;
  const { bowler, ball, visit, ticket } = await onTheCounter(shop);
  const write = { by };
  await records.tickets.change(ticket.id, { complaint: `${mark} complaint` }, { by, expectedVersion: 1 });
  await records.settings.change({ shopName: mark }, { by, expectedVersion: 1 });
  const person = await records.people.create({ name: `${mark} hand`, initials: "WH" }, write);
  const item = await records.stockItems.create({ name: `${mark} pad`, kind: "pad", unit: "uses" }, write);
  const stage = await records.stagesDone.create(
    {
      ticketId: ticket.id,
      personId: person.id,
      initials: "WH",
      doneAt: AT,
      what: `${mark} sanding`,
      used: [{ stockItemId: item.id, quantity: 1 }],
    },
    write,
  );
  const reference = await records.referenceBalls.create({ name: `${mark} 2000` }, write);
  const house = await records.houses.create({ name: `${mark} Lanes` }, write);
  const lane = await records.lanes.create({ houseId: house.id, number: 7, notes: mark }, write);
  const pattern = await records.patterns.create({ houseId: house.id, name: mark, oil: { pattern: "medium-41" } }, write);
  const profile = await records.profileFiles.add({ ballId: ball.id, name: `${mark}.smd` }, Buffer.from(mark), write);
  const reading = {
    ballId: ball.id,
    ticketId: ticket.id,
    at: AT,
    when: "before",
    place: "track",
    how: "tester",
    raUm: 0.4,
    note: mark,
  } as const;
  const payment = { visitId: visit.id, at: AT, kind: "payment", cents: 1000, currency: "USD", method: "cash", note: mark } as const;
  return {
    settings: visit.shopId,
    people: person.id,
    bowlers: bowler.id,
    balls: ball.id,
    visits: visit.id,
    tickets: ticket.id,
    stagesDone: stage.id,
    referenceBalls: reference.id,
    profileFiles: profile.id,
    readings: (await records.readings.create(reading, write)).id,
    photos: (await records.photos.add({ ticketId: ticket.id, of: "condition", note: mark }, PNG, write)).id,
    photosOfBall: (await records.photos.add({ ballId: ball.id, of: "serial" }, PNG, write)).id,
    houses: house.id,
    lanes: lane.id,
    patterns: pattern.id,
    shotNotes: (await records.shotNotes.create({ bowlerId: bowler.id, laneId: lane.id, at: AT, note: mark }, write)).id,
    stockItems: item.id,
    stockMovements: (await records.stockMovements.list()).items[0].id,
    prices: (await records.prices.create({ name: mark, eachCents: 1, currency: "USD", from: "2026-01-01" }, write)).id,
    payments: (await records.payments.create(payment, write)).id,
    prepaid: (await records.prepaid.create({ bowlerId: bowler.id, at: AT, change: 5, note: mark }, write)).id,
    imports: (await records.lists.apply("bowlers", `name\nIda ${mark === MARK ? "Smew" : "Wigeon"}\n`, undefined, write)).importId,
    audit: (await records.audit.list()).items[0].id,
    backups: (await records.backups.make("asked")).name,
  };
}

/** Rows that are one shop's alone: of tables that belong to the shop, and photos that are of no ball. */
async function ownRows(db: Db, shopId: string): Promise<Record<string, unknown>[]> {
  const rows: Record<string, unknown>[] = [];
  for (const [table, { belongsTo, key }] of Object.entries(TABLE_RULES)) {
    if (belongsTo === "all shops" || belongsTo === "no shop") continue;
    let query = db
      .selectFrom(table as "photos")
      .selectAll()
      .where("shopId", "=", shopId);
    if (belongsTo === "all shops with its ball") query = query.where("ballId", "is", null);
    for (const column of key) query = query.orderBy(column);
    rows.push(...(await query.execute()));
  }
  return rows;
}

/** Each filter of a list with the id of such a thing, and other queries with what they cannot do without. */
function queriesOf(route: Route, ids: Ids): Record<string, string>[] {
  const must = mustOf(route);
  const fields = Object.keys(route.query?.shape ?? {});
  const narrowing = fields.filter((field) => field.endsWith("Id") || ["by", "after", "reworkOf"].includes(field));
  const each = narrowing.map((field) => ({ ...must, [field]: ids[meant(field)] }));
  // A photo or file that is added hangs on something: each of these would hang it on West.
  return route.method === "post" && each.length > 0 ? each : [must, ...each];
}

/** Of which kind a field holds an id. */
function meant(field: string): keyof Ids {
  if (field === "by" || field === "personId") return "people";
  return (
    THING_KINDS.find((kind) => [`${kind.slice(0, -1)}Id`, `${kind.replace("stagesDone", "stageDone")}Id`].includes(field)) ?? "tickets"
  );
}

/** What a route's query cannot do without. */
function mustOf(route: Route): Record<string, string> {
  const fields = Object.keys(route.query?.shape ?? {});
  const must: Record<string, string> = {};
  if (fields.includes("of")) must.of = "other";
  if (fields.includes("name")) must.name = "x.smd";
  if (fields.includes("words")) must.words = MARK;
  if (fields.includes("from")) Object.assign(must, { from: "2026-05-30", to: "2026-06-01" });
  return must;
}

/** East's own thing that a change would start from. */
function kindOf({ path }: Route): keyof Ids {
  const word = path.split("/")[2].replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
  return THING_KINDS.find((kind) => kind === word) ?? "tickets";
}
