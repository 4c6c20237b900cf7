import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { API } from "#contract/routes/api";
import { PNG } from "../records/pictures.ts";
import { problemOf, type Reply, type ShopServer, shopServer } from "./shopServer.ts";

const AT = "2026-05-31T18:00:00.000Z";
const NOBODY = "01890000-0000-7000-8000-000000000000";

/** A kind of thing as its four or five routes have it: what is written, and a change of it. */
interface Kind {
  readonly many: string;
  readonly one: string;
  readonly written: (ids: Ids) => Record<string, unknown>;
  readonly wrong: { readonly field: string; readonly value: unknown };
  readonly change?: Record<string, unknown>;
  readonly isRemovable?: true;
}
type Ids = Readonly<Record<string, string>>;

/** In the order in which they hang on one another; each is made once and its id is there for the next. */
const KINDS: readonly Kind[] = [
  {
    many: "People",
    one: "Person",
    written: () => ({ name: "Ansel Quillfeather", initials: "AQ" }),
    wrong: { field: "initials", value: "TOO LONG" },
    change: { initials: "A" },
  },
  {
    many: "Bowlers",
    one: "Bowler",
    written: () => ({ name: "Ottilie Sandgrouse", phone: "555-0101" }),
    wrong: { field: "hand", value: "third" },
    change: { hand: "left" },
  },
  {
    many: "Balls",
    one: "Ball",
    written: ({ Bowler }) => ({ name: "Grey Heron", serial: "QX-7731", cover: "solid", bowlerId: Bowler }),
    wrong: { field: "cover", value: "steel" },
    change: { job: "strike" },
  },
  {
    many: "Visits",
    one: "Visit",
    written: ({ Bowler }) => ({
      bowlerId: Bowler,
      arrivedAt: AT,
      currency: "USD",
      charges: [{ what: "Refresh", eachCents: 2000, taxMillipercent: 8250 }],
    }),
    wrong: { field: "arrivedAt", value: "yesterday" },
    change: { note: "In a hurry" },
  },
  {
    many: "Tickets",
    one: "Ticket",
    written: ({ Visit, Ball }) => ({ visitId: Visit, ballId: Ball, receivedAt: AT }),
    wrong: { field: "finishBefore", value: "shiny" },
    change: { complaint: "Hooks early" },
  },
  {
    many: "ReferenceBalls",
    one: "ReferenceBall",
    written: () => ({ name: "Reference 2000", finish: "2000" }),
    wrong: { field: "raUm", value: -1 },
    change: { raUm: 0.5 },
    isRemovable: true,
  },
  {
    many: "StockItems",
    one: "StockItem",
    written: () => ({ name: "Pad 2000", kind: "pad", number: 2000, unit: "uses" }),
    wrong: { field: "unit", value: "bushels" },
    change: { reorderAt: 5 },
  },
  {
    many: "StockMovements",
    one: "StockMovement",
    written: ({ StockItem }) => ({ stockItemId: StockItem, at: AT, change: 100, why: "delivered" }),
    wrong: { field: "why", value: "eaten" },
  },
  {
    many: "StagesDone",
    one: "StageDone",
    written: ({ Ticket, Person, StockItem }) => ({
      ticketId: Ticket,
      personId: Person,
      initials: "AQ",
      doneAt: AT,
      what: "Sand: pad 2000",
      used: [{ stockItemId: StockItem, quantity: 1 }],
    }),
    wrong: { field: "pressureN", value: 9999 },
  },
  {
    many: "Readings",
    one: "Reading",
    written: ({ Ball, Ticket }) => ({ ballId: Ball, ticketId: Ticket, at: AT, when: "before", place: "track", how: "tester", raUm: 0.4 }),
    wrong: { field: "raUm", value: 101 },
  },
  {
    many: "Houses",
    one: "House",
    written: () => ({ name: "Nowhere Lanes" }),
    wrong: { field: "name", value: "" },
    change: { notes: "Old machine" },
    isRemovable: true,
  },
  {
    many: "Lanes",
    one: "Lane",
    written: ({ House }) => ({ houseId: House, number: 7 }),
    wrong: { field: "number", value: 0 },
    change: { surface: "wood" },
    isRemovable: true,
  },
  {
    many: "Patterns",
    one: "Pattern",
    written: ({ House }) => ({ houseId: House, name: "House pattern", oil: { pattern: "medium-41" } }),
    wrong: { field: "oil", value: { pattern: "no such" } },
    change: { notes: "Since May" },
    isRemovable: true,
  },
  {
    many: "ShotNotes",
    one: "ShotNote",
    written: ({ Bowler, Ball, Lane }) => ({
      bowlerId: Bowler,
      ballId: Ball,
      laneId: Lane,
      at: AT,
      boards: [{ atFt: 15, board: 12 }],
      leave: [10],
    }),
    wrong: { field: "speedMph", value: 99 },
    change: { leave: [] },
    isRemovable: true,
  },
  {
    many: "Prices",
    one: "Price",
    written: () => ({ name: "Refresh", eachCents: 2000, currency: "USD", from: "2026-01-01" }),
    wrong: { field: "eachCents", value: 0.5 },
    change: { eachCents: 2200 },
    isRemovable: true,
  },
  {
    many: "Payments",
    one: "Payment",
    written: ({ Visit }) => ({ visitId: Visit, at: AT, kind: "payment", cents: 1000, currency: "USD", method: "cash" }),
    wrong: { field: "cents", value: 0 },
  },
  {
    many: "Prepaid",
    one: "Prepaid",
    written: ({ Bowler }) => ({ bowlerId: Bowler, at: AT, change: 5 }),
    wrong: { field: "change", value: 0.5 },
  },
];

let shop: ShopServer;
const ids: Record<string, string> = {};

beforeAll(async () => {
  shop = await shopServer();
});
afterAll(() => shop.end());

type Name = keyof typeof API;
const ask = (name: string, options: Parameters<ShopServer["ask"]>[1] = {}): Promise<Reply> => shop.ask(name as Name, options);
const asked = (kind: Kind): string => JSON.stringify(kind.written(ids));
let keys = 0;
const newKey = () => ({ "idempotency-key": `key-${++keys}` });

describe.each(KINDS)("$many", (kind) => {
  test("are kept, given, and listed", async () => {
    const made = await ask(`create${kind.one}`, { body: kind.written(ids), headers: newKey() });
    expect(made.body).toMatchObject(JSON.parse(asked(kind)));
    ids[kind.one] = made.body.id;
    expect([made.headers.get("etag"), made.headers.get("location")]).toEqual([
      '"1"',
      `${API[`create${kind.one}` as Name].path}/${made.body.id}`,
    ]);
    const given = await ask(`get${kind.one}`, { params: { id: made.body.id } });
    expect(given.body.id).toBe(made.body.id);
    const unchanged = await ask(`get${kind.one}`, {
      params: { id: made.body.id },
      headers: { "if-none-match": given.headers.get("etag") ?? "" },
    });
    expect([unchanged.status, unchanged.bytes.length]).toEqual([304, 0]);
    const { body: page } = await ask(`list${kind.many}`);
    expect(page.items.map(({ id }: { id: string }) => id)).toContain(made.body.id);
  });

  test("a wrong field is refused by name, value and what is allowed, and nothing is kept", async () => {
    const before = (await ask(`list${kind.many}`)).body.items.length;
    const { field, value } = kind.wrong;
    const refused = await ask(`create${kind.one}`, { body: { ...kind.written(ids), [field]: value }, headers: newKey() });
    const [problem] = problemOf(refused, "invalid").problems ?? [];
    expect([problem.path, problem.value]).toEqual([field, value]);
    expect(problem.message).toContain(problem.allowed);
    const unknown = await ask(`create${kind.one}`, { body: { ...kind.written(ids), nonsense: 1 }, headers: newKey() });
    expect(problemOf(unknown, "invalid").problems?.[0].path).toBe("nonsense");
    expect((await ask(`list${kind.many}`)).body.items.length).toBe(before);
  });

  test("one that is not there is not found", async () => {
    problemOf(await ask(`get${kind.one}`, { params: { id: NOBODY } }), "notFound");
    if (kind.change !== undefined)
      problemOf(await ask(`change${kind.one}`, { params: { id: NOBODY }, body: kind.change, headers: { "if-match": '"1"' } }), "notFound");
  });

  test("a retry with the same key changes nothing; the same key for something else is refused", async () => {
    const headers = newKey();
    const [first, again] = [
      await ask(`create${kind.one}`, { body: kind.written(ids), headers }),
      await ask(`create${kind.one}`, { body: kind.written(ids), headers }),
    ];
    expect(again.body).toEqual(first.body);
    const { items } = (await ask(`list${kind.many}`, { query: { limit: "200" } })).body;
    expect(items.filter(({ id }: { id: string }) => id === first.body.id)).toHaveLength(1);
    problemOf(await ask(`create${kind.one}`, { body: { ...kind.written(ids), note: "other", notes: "other" }, headers }), "invalid");
  });
});

describe.each(KINDS.filter(({ change }) => change !== undefined))("$many change", (kind) => {
  test("over the version that was seen; over another one nothing is written and the present one comes back", async () => {
    const params = { id: ids[kind.one] };
    const { headers, body: before } = await ask(`get${kind.one}`, { params });
    const ifMatch = { "if-match": headers.get("etag") ?? "" };
    problemOf(await ask(`change${kind.one}`, { params, body: kind.change }), "versionMissing");
    const changed = await ask(`change${kind.one}`, { params, body: kind.change, headers: ifMatch });
    expect(changed.body).toEqual({ ...before, ...kind.change, version: before.version + 1, changedAt: changed.body.changedAt });
    const late = await ask(`change${kind.one}`, { params, body: kind.change, headers: ifMatch });
    expect(problemOf(late, "changedMeanwhile").current).toEqual(changed.body);
  });
});

describe("a key for something else", () => {
  test("is refused", async () => {
    const headers = newKey();
    await ask("createHouse", { body: { name: "Elsewhere Bowl" }, headers });
    problemOf(await ask("createHouse", { body: { name: "Another" }, headers }), "keyReused");
  });
  test("money needs one, and it must be short and visible", async () => {
    const body = KINDS.find(({ one }) => one === "Payment")?.written(ids);
    problemOf(await ask("createPayment", { body }), "keyMissing");
    problemOf(await ask("createPayment", { body, headers: { "idempotency-key": "x".repeat(129) } }), "notRead");
  });
});

test("things that nothing hangs on are taken out; others are not", async () => {
  const house = { id: ids.House };
  const version = async (name: string, params: { id: string }) => ({ "if-match": (await ask(name, { params })).headers.get("etag") ?? "" });
  problemOf(await ask("removeHouse", { params: house, headers: await version("getHouse", house) }), "invalid");
  for (const { one } of KINDS.filter(({ isRemovable, one: name }) => isRemovable && name !== "House" && name !== "Lane")) {
    const params = { id: ids[one] };
    expect((await ask(`remove${one}`, { params, headers: await version(`get${one}`, params) })).status).toBe(204);
    problemOf(await ask(`get${one}`, { params }), "notFound");
  }
});

test("lists come in pages by cursor, narrowed by a field, in either order; what the records do not know is refused", async () => {
  for (let number = 20; number < 27; number++) await ask("createLane", { body: { houseId: ids.House, number } });
  const seen: number[] = [];
  let after: string | null = null;
  do {
    const query: Record<string, string> = { houseId: ids.House, limit: "3", order: "oldest first", ...(after === null ? {} : { after }) };
    const { body }: Reply = await ask("listLanes", { query });
    seen.push(...body.items.map((lane: { number: number }) => lane.number));
    after = body.next;
  } while (after !== null);
  expect(seen.slice(-7)).toEqual([20, 21, 22, 23, 24, 25, 26]);
  expect((await ask("listLanes", { query: { houseId: NOBODY } })).body.items).toEqual([]);
  expect(problemOf(await ask("listLanes", { query: { limit: "0" } }), "invalid").problems?.[0].path).toBe("limit");
  expect(problemOf(await ask("listLanes", { query: { colour: "red" } }), "invalid").problems?.[0].path).toBe("colour");
  expect(problemOf(await ask("listLanes", { query: { after: "made up" } }), "invalid").problems?.[0].path).toBe("after");
});

describe("photos and profile files", () => {
  test("a photo is kept by what its bytes are, given back as it was kept, noted and taken out", async () => {
    const query = { of: "serial", ballId: ids.Ball };
    const made = await ask("createPhoto", { query, body: new Uint8Array(PNG), headers: { "content-type": "image/png" } });
    expect(made.body).toMatchObject({ of: "serial", ballId: ids.Ball, type: "image/png" });
    const params = { id: made.body.id };
    const given = await ask("photoBytes", { params });
    expect([given.headers.get("content-type"), given.bytes.length]).toEqual(["image/png", made.body.bytes]);
    expect(given.headers.get("x-content-type-options")).toBe("nosniff");
    expect((await ask("listPhotos", { query: { ballId: ids.Ball } })).body.items).toHaveLength(1);
    const changed = await ask("changePhoto", { params, body: { note: "Before sanding" }, headers: { "if-match": '"1"' } });
    expect(changed.body).toMatchObject({ note: "Before sanding", of: "serial" });
    expect((await ask("getPhoto", { params })).body).toEqual(changed.body);
    expect((await ask("removePhoto", { params, headers: { "if-match": '"2"' } })).status).toBe(204);
    problemOf(await ask("photoBytes", { params }), "notFound");
  });

  test.each([
    ["a drawing that can carry scripts", "image/svg+xml", "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"],
    ["the same, called a PNG", "image/png", "<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>"],
    ["a page, called a JPEG", "image/jpeg", "<!doctype html><script>alert(1)</script>"],
    ["nothing", "image/png", ""],
  ])("%s is no photo", async (_what, type, text) => {
    const body = new TextEncoder().encode(text);
    problemOf(await ask("createPhoto", { query: { of: "other" }, body, headers: { "content-type": type } }), "wrongType");
  });

  test("a tester's file comes back byte for byte, as something to save", async () => {
    const body = new TextEncoder().encode("ISO 5436 - 2000\r\n");
    const made = await ask("createProfileFile", {
      query: { name: "../../track.smd", ballId: ids.Ball },
      body,
      headers: { "content-type": "application/octet-stream" },
    });
    const params = { id: made.body.id };
    const given = await ask("profileFileBytes", { params });
    expect(given.bytes).toEqual(body);
    expect(given.headers.get("content-disposition")).toBe('attachment; filename="profile.dat"');
    expect((await ask("listProfileFiles", { query: { ballId: ids.Ball } })).body.items.map(({ id }: { id: string }) => id)).toEqual([
      params.id,
    ]);
    expect((await ask("getProfileFile", { params })).body.name).toBe("../../track.smd");
    expect((await ask("changeProfileFile", { params, body: { note: "Track" }, headers: { "if-match": '"1"' } })).body.note).toBe("Track");
    expect((await ask("removeProfileFile", { params, headers: { "if-match": '"2"' } })).status).toBe(204);
  });
});
