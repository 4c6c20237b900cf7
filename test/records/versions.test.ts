import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { z } from "zod";
import { THING_KINDS, type ThingKind } from "#contract/records/auditEntry";
import type { RecordsFault } from "#contract/records/fault";
import { restoreBackup } from "#records/backup/restoreBackup";
import { FORMAT, LEAST_WRITER } from "#records/database/format";
import type { Db, ThingRow } from "#records/database/tables";
import { openRecords } from "#records/openRecords";
import type { Records } from "#records/records";
import { KINDS } from "#records/things/kinds";
import { readRow, rowOf } from "#records/things/rows";
import { withUnknown } from "#records/things/unknownFields";
import { schemaVersionOf, upgraded } from "#records/upgrades/upgrade";
import { PNG } from "./pictures.ts";
import { testPostgres } from "./postgres.ts";
import { databaseOf, onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

/* What was kept once can be read for ever; what cannot be read stops nothing else; programs of two versions spoil nothing of each other's. */

const RELEASED = join(import.meta.dirname, "released");

/** Rows as the released programs wrote them, into a shop of invented people. */
const EXAMPLES = readdirSync(RELEASED).flatMap((version) => {
  const rows = JSON.parse(readFileSync(join(RELEASED, version, "rows.json"), "utf8")) as Record<ThingKind, ThingRow[]>;
  return THING_KINDS.flatMap((kind) => rows[kind].map((row) => ({ version, kind, row })));
});

/** What was kept once, with every field that it had: as it is to be read now. More may stand beside it. */
function asKeptSince(value: unknown): unknown {
  // Names stand on one line since, and nothing turns their direction: the next test has them letter by letter.
  if (typeof value === "string") return /^[\x20-\x7e]*$/.test(value) ? value : expect.any(String);
  if (Array.isArray(value)) return value.map(asKeptSince);
  if (typeof value !== "object" || value === null) return value;
  // Taxes were thousandths of the price, and are thousandths of a percent.
  const fields = Object.entries(value).map(([name, was]) =>
    name === "taxPermille" ? ["taxMillipercent", 100 * was] : [name, asKeptSince(was)],
  );
  return expect.objectContaining(Object.fromEntries(fields));
}

describe("what a released program kept", () => {
  it("has an example of every kind", () => {
    for (const version of readdirSync(RELEASED))
      expect(new Set(EXAMPLES.filter((one) => one.version === version).map(({ kind }) => kind))).toEqual(new Set(THING_KINDS));
  });

  it.each(EXAMPLES.map((one) => [one.version, one.kind, one.row] as const))(
    "%s: %s are read, and written again lose nothing",
    (_, kind, row) => {
      const first = { ...row, schemaVersion: row.schemaVersion ?? 1 };
      const { thing } = readRow(KINDS[kind], first);
      const again = rowOf(KINDS[kind], thing);
      expect(again.schemaVersion).toBe(schemaVersionOf(kind));
      expect(readRow(KINDS[kind], again).thing).toEqual(thing);
      expect(thing).toEqual(asKeptSince(JSON.parse(row.body)));
    },
  );

  it("of 0.1.0, names on several lines or in another direction, stands on one", () => {
    const names = (kind: ThingKind) =>
      EXAMPLES.filter((one) => one.kind === kind).map(({ row }) =>
        Reflect.get(readRow(KINDS[kind], { ...row, schemaVersion: 1 }).thing, "name"),
      );
    expect(names("bowlers")).toContain("Ottilie Sandgrouse");
    expect(names("balls")).toContain("Grey Heron");
    expect(names("houses")).toContain("Reed Bank");
    expect(names("prices")).toContain("?");
  });

  it("of 0.1.0, taxes in thousandths of the price, are the same taxes: 80 ‰ are 8.000 %", () => {
    const of = (kind: ThingKind) =>
      EXAMPLES.filter((one) => one.version === "0.1.0" && one.kind === kind).map(({ row }) => readRow(KINDS[kind], row).thing);
    const taxes = (kind: ThingKind) => of(kind).map((thing) => Reflect.get(thing, "taxMillipercent"));
    expect(taxes("prices")).toEqual([0, 8000]);
    expect(taxes("settings")).toEqual([8000]);
    // As it was reckoned then: rounded over the bill, and added to it.
    expect(of("visits")).toMatchObject([{ charges: [{ taxMillipercent: 8000 }], taxRounding: "bill", taxIncluded: "no" }]);
    expect(JSON.stringify([...of("prices"), ...of("settings"), ...of("visits")])).not.toContain("ermille");
  });
});

describe("what was not asked in older versions", () => {
  it.each(readdirSync(RELEASED))("%s: is not known", (version) => {
    const things = (kind: ThingKind) =>
      EXAMPLES.filter((one) => one.version === version && one.kind === kind).map(
        ({ row }) => readRow(KINDS[kind], { ...row, schemaVersion: row.schemaVersion ?? 1 }).thing as unknown as Record<string, never[]>,
      );
    for (const ticket of things("tickets")) expect(ticket).toMatchObject({ playedOn: null, scratches: null });
    for (const { games } of things("balls")) for (const entry of games) expect(entry).toMatchObject({ word: null });
    for (const { deliveries } of things("bowlers")) for (const entry of deliveries) expect(entry).toMatchObject({ plays: null });
    const entries = [...things("balls").flatMap(({ games }) => games), ...things("bowlers").flatMap(({ deliveries }) => deliveries)];
    expect(entries.length).toBeGreaterThan(0);
  });
});

describe("a cover that nobody knew", () => {
  const ball = { name: "Marl Fox", cover: "solid", notes: "Cover not known at the counter; reactive solid taken." };

  it("was kept as a reactive solid with a note once, and is not known since", () => {
    expect(upgraded("balls", ball, 1)).toMatchObject({ cover: null, notes: "" });
    expect(upgraded("balls", ball, 2)).toMatchObject({ cover: null, notes: "" });
    expect(upgraded("balls", { ...ball, notes: "Cover not known beside the lane; reactive solid taken." }, 2)).toMatchObject({
      cover: null,
    });
  });

  it("stays what somebody has written since: another cover, or more in the notes", () => {
    const pearl = { ...ball, cover: "pearl" };
    expect(upgraded("balls", pearl, 2)).toEqual(pearl);
    const seen = { ...ball, notes: `${ball.notes} Seen: it is one.` };
    expect(upgraded("balls", seen, 2)).toEqual(seen);
  });
});

describe("fields that are not known", () => {
  it("go back where they stood, also in lists that grew, shrank or were turned round", () => {
    const whole = {
      name: "A",
      size: 42,
      core: { lb: 15, gyro: 2.5 },
      log: [
        { at: 1, by: "x" },
        { at: 2, by: "y" },
        { at: 3, by: "z" },
      ],
    };
    const known = { name: "A", core: { lb: 15 }, log: [{ at: 1 }, { at: 2 }, { at: 3 }] };
    const next = { name: "B", core: { lb: 14 }, log: [{ at: 3 }, { at: 1 }, { at: 9 }, { at: 4 }] };
    expect(withUnknown(whole, known, next)).toEqual({
      name: "B",
      size: 42,
      core: { lb: 14, gyro: 2.5 },
      log: [{ at: 3, by: "z" }, { at: 1, by: "x" }, { at: 9 }, { at: 4 }],
    });
    expect(withUnknown(whole, known, { ...known, log: [{ at: 1 }, { at: 7 }, { at: 3 }] }).log).toEqual([
      { at: 1, by: "x" },
      { at: 7, by: "y" },
      { at: 3, by: "z" },
    ]);
  });
});

const postgres = await testPostgres();
afterAll(() => postgres?.stop());
const ENGINES: readonly (readonly [string, () => Promise<TestShop>])[] = [
  ["SQLite", () => testShop()],
  ...(postgres === null ? [] : ([["PostgreSQL", async () => testShop({ postgres: await postgres.newDatabase() })]] as const)),
];

async function plant(db: Db, kind: ThingKind, id: string, change: (body: Record<string, unknown>) => unknown): Promise<void> {
  const { body } = await db
    .selectFrom(kind as "bowlers")
    .select("body")
    .where("id", "=", id)
    .executeTakeFirstOrThrow();
  const changed = change(JSON.parse(body));
  await db
    .updateTable(kind as "bowlers")
    .set({ body: typeof changed === "string" ? changed : JSON.stringify(changed) })
    .where("id", "=", id)
    .execute();
}

describe.each(ENGINES)("on %s", (_, open) => {
  let shop: TestShop;
  let db: Db;
  beforeEach(async () => {
    shop = await open();
    db = databaseOf(shop.parts);
  });
  afterEach(async () => {
    vi.doUnmock("#contract/records/bowler");
    vi.doUnmock("#records/database/format");
    vi.resetModules();
    await db.destroy();
    await shop.end();
  });

  it("a field that is not known hides nothing, and is there still after a change", async () => {
    const { records, by } = shop;
    const { bowler, ball } = await onTheCounter(shop);
    await plant(db, "bowlers", bowler.id, (body) => ({ ...body, shoeSize: 42 }));
    await plant(db, "balls", ball.id, (body) => ({ ...body, core: { massLb: 15, density: 1.1 } }));
    expect((await records.bowlers.list()).items).toMatchObject([{ id: bowler.id, name: bowler.name }]);
    expect((await records.search.find("sandgrouse")).bowlers).toHaveLength(1);
    await records.bowlers.change(bowler.id, { notes: "Changed by the older program" }, { by, expectedVersion: 1 });
    await records.balls.change(ball.id, { notes: "Too" }, { by, expectedVersion: 1 });
    const rows = await Promise.all(
      (["bowlers", "balls"] as const).map((kind) => db.selectFrom(kind).select("body").executeTakeFirstOrThrow()),
    );
    expect(rows.map(({ body }) => JSON.parse(body))).toMatchObject([
      { shoeSize: 42, notes: "Changed by the older program" },
      { core: { massLb: 15, density: 1.1 }, notes: "Too" },
    ]);
    expect(records.unreadable.met()).toEqual([]);
  });

  it("what cannot be read is set aside: lists, pages and searches go on, it can be seen and put right", async () => {
    const { records, by } = shop;
    const { bowler, ball } = await onTheCounter(shop);
    const others = [];
    for (const name of ["Hedda Plover", "Joost Dunlin"]) others.push(await records.bowlers.create({ name }, { by }));
    await plant(db, "bowlers", bowler.id, (body) => ({ ...body, hand: "middle" }));
    await plant(db, "balls", ball.id, () => "{broken");
    expect((await records.bowlers.list()).items.map(({ name }) => name)).toEqual(["Joost Dunlin", "Hedda Plover"]);
    const first = await records.bowlers.list({ limit: 1, order: "oldest first" });
    expect(first.items).toEqual([]);
    expect((await records.bowlers.list({ limit: 1, order: "oldest first", after: first.next })).items).toMatchObject([
      { name: "Hedda Plover" },
    ]);
    expect((await records.search.find("sandgrouse")).bowlers).toEqual([]);
    expect((await refusal<RecordsFault>(records.bowlers.get(bowler.id))).kind).toBe("unreadable");
    expect((await records.lists.exportAll()).find(({ name }) => name === "everything.json")?.text).toContain("{broken");
    expect((await records.lists.preview("balls", "name,cover\nTeal,solid\n")).problems).toEqual([]);
    await records.backups.keepUp();

    const found = await records.unreadable.lookThrough();
    expect(found).toMatchObject([
      { kind: "bowlers", id: bowler.id, problems: [{ path: "hand", value: "middle" }] },
      { kind: "balls", id: ball.id },
    ]);
    const raw = await records.unreadable.raw(bowler.id);
    const body = JSON.parse(raw.body);
    const write = { by, expectedVersion: raw.version };
    expect((await refusal<RecordsFault>(records.unreadable.mend(bowler.id, body, write))).problems).toMatchObject([{ path: "hand" }]);
    await records.unreadable.mend(bowler.id, { ...body, hand: "left" }, write);
    expect(await records.bowlers.get(bowler.id)).toMatchObject({ hand: "left", name: bowler.name, version: 2 });
    expect((await records.search.find("sandgrouse")).bowlers).toHaveLength(1);
    expect(records.unreadable.met().map(({ kind }) => kind)).toEqual(["balls"]);
    expect((await refusal<RecordsFault>(records.unreadable.mend(others[0].id, {}, { by, expectedVersion: 9 }))).kind).toBe(
      "changedMeanwhile",
    );
    expect((await records.audit.list()).items[0]).toMatchObject({ did: "mend", kind: "bowlers", thingId: bowler.id });
  });

  it("the file of a photo whose row cannot be read is not tidied away, and is in the backup", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const photo = await records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by });
    await plant(db, "photos", photo.id, (body) => `${JSON.stringify(body).slice(0, -1)},`);
    await records.backups.keepUp();
    const { name } = await records.backups.make("asked");
    await records.close();
    const folder = join(parts.folder, "elsewhere");
    await restoreBackup(join(parts.folder, "backups", name), {
      folder,
      now: parts.now,
      randomBytes: parts.randomBytes,
      programVersion: "0",
    });
    expect(readFileSync(join(folder, "live", "photos", `${photo.sha256}.png`))).toEqual(PNG);
    await shop.reopen();
  });

  it("settings and people that cannot be read do not lock the shop: what stands for them is looked at, and never written", async () => {
    const { records, by } = shop;
    const { id } = await records.settings.get();
    await plant(db, "settings", id, (body) => ({ ...body, speedUnit: "knots" }));
    await plant(db, "people", by, () => "{broken");
    expect(await records.settings.get()).toMatchObject({ shopName: "My shop" });
    expect((await records.people.list()).items).toMatchObject([{ id: by, name: "?" }]);
    expect(new Set(records.unreadable.met().map(({ kind }) => kind))).toEqual(new Set(["settings", "people"]));
    expect((await refusal<RecordsFault>(records.settings.change({ shopName: "Other" }, { by, expectedVersion: 1 }))).kind).toBe(
      "unreadable",
    );
    const { version } = await records.unreadable.raw(by);
    await records.unreadable.mend(by, { name: "Wren", initials: "W" }, { by, expectedVersion: version });
    expect((await records.people.list()).items).toMatchObject([{ name: "Wren" }]);
    // What was put right elsewhere is told no more.
    await plant(db, "settings", id, ({ speedUnit: _, ...body }) => body);
    expect(await records.unreadable.lookThrough()).toEqual([]);
  });

  it("an entry of the trail that cannot be read hides no other, nor stops an export", async () => {
    const { records } = shop;
    await onTheCounter(shop);
    const { items } = await records.audit.list();
    await db.updateTable("audit").set({ did: "sing", fields: "{broken" }).where("id", "=", items[1].id).execute();
    const again = (await records.audit.list()).items;
    expect(again.map(({ id }) => id)).toEqual(items.map(({ id }) => id));
    expect(again[1].did).toBe("not readable");
    expect((await records.lists.exportAll()).find(({ name }) => name === "audit.csv")?.text).toContain("sing");
  });

  it("a bowler is erased also where rows cannot be read, and so is what newer programs kept of them", async () => {
    const { records, by } = shop;
    const { bowler, ball, ticket } = await onTheCounter(shop);
    await plant(db, "bowlers", bowler.id, (body) => ({ ...body, nick: "Sandy Sandgrouse" }));
    await plant(db, "tickets", ticket.id, (body) => ({ ...body, complaint: "Sandgrouse says so", symptoms: "none" }));
    await plant(db, "balls", ball.id, (body) => ({ ...body, core: { massLb: 15, ownerNote: "Ottilie Sandgrouse" } }));
    await records.personal.erase(bowler.id, { by });
    for (const kind of ["bowlers", "tickets", "balls"] as const)
      expect((await db.selectFrom(kind).select("body").execute()).map(({ body }) => body).join()).not.toContain("Sandgrouse");
    await shop.reopen();
  });

  it("a bowler who cannot be read is erased all the same, and looked for by the name that can be made out", async () => {
    const { records, by } = shop;
    const { bowler } = await onTheCounter(shop);
    await records.houses.create({ name: "Reed Bank", notes: "Ask Ottilie Sandgrouse" }, { by });
    await plant(db, "bowlers", bowler.id, (body) => ({ ...body, hand: "middle" }));
    await records.personal.erase(bowler.id, { by });
    expect(await records.bowlers.get(bowler.id)).toMatchObject({ hand: null });
    expect((await records.houses.list()).items[0].notes).not.toContain("Sandgrouse");
  });

  it("inside a write nothing is passed over: a sum that leaves one out would be wrong", async () => {
    const { records, by } = shop;
    const { visit } = await onTheCounter(shop);
    const payment = {
      visitId: visit.id,
      at: "2026-05-31T18:00:00.000Z",
      kind: "payment",
      cents: 1000,
      currency: "USD",
      method: "cash",
    } as const;
    const paid = await records.payments.create(payment, { by });
    const refund = { ...payment, kind: "refund", refundOf: paid.id } as const;
    const back = await records.payments.create(refund, { by });
    await plant(db, "payments", back.id, (body) => ({ ...body, method: "shells" }));
    expect((await refusal<RecordsFault>(records.payments.create(refund, { by }))).kind).toBe("unreadable");
  });

  /** The next version of the program: a bowler has a size of shoes. */
  async function newerProgram(format: { readonly FORMAT: number; readonly LEAST_WRITER: number }): Promise<Records> {
    vi.resetModules();
    vi.doMock("#contract/records/bowler", async (original) => {
      const actual = await original<typeof import("#contract/records/bowler")>();
      const field = { shoeSize: z.number().nullable().default(null) };
      return { ...actual, bowlerWritten: actual.bowlerWritten.extend(field), bowlerKept: actual.bowlerKept.extend(field) };
    });
    vi.doMock("#records/database/format", async (original) => ({ ...(await original<object>()), ...format }));
    const { openRecords: openNewer } = await import("#records/openRecords");
    return openNewer({ ...shop.parts, programVersion: "9.9.9" });
  }

  it("today's program and one with a field more work at once, and lose nothing of each other's", async () => {
    const { records, by } = shop;
    const newer = await newerProgram({ FORMAT, LEAST_WRITER });
    const made = await newer.bowlers.create({ name: "Zoë Wren", shoeSize: 41 } as never, { by });
    const mine = await records.bowlers.create({ name: "Hedda Plover" }, { by });
    for (let version = 1; version <= 6; version += 2) {
      await records.bowlers.change(made.id, { notes: `older ${version}` }, { by, expectedVersion: version });
      await newer.bowlers.change(made.id, { phone: `555 010${version}` }, { by, expectedVersion: version + 1 });
    }
    expect(await newer.bowlers.get(made.id)).toMatchObject({ shoeSize: 41, notes: "older 5", phone: "555 0105", version: 7 });
    await newer.bowlers.change(mine.id, { shoeSize: 38 } as never, { by, expectedVersion: 1 });
    expect((await records.bowlers.list()).items.map(({ name }) => name)).toEqual(["Hedda Plover", "Zoë Wren"]);
    expect(records.unreadable.met()).toEqual([]);
    await newer.close();
  });

  it("a newer program that keeps what an older one would spoil has it only read, and say why", async () => {
    const { records, by } = shop;
    const { bowler } = await onTheCounter(shop);
    await records.close();
    const newer = await newerProgram({ FORMAT: FORMAT + 1, LEAST_WRITER: FORMAT + 1 });
    await newer.bowlers.change(bowler.id, { shoeSize: 41 } as never, { by, expectedVersion: 1 });
    await newer.close();
    vi.doUnmock("#contract/records/bowler");
    const older = await openRecords(shop.parts);
    expect(older.newerProgram).toBe("9.9.9");
    expect(await older.bowlers.get(bowler.id)).toMatchObject({ name: bowler.name });
    const fault = await refusal<RecordsFault>(older.bowlers.change(bowler.id, { notes: "x" }, { by, expectedVersion: 2 }));
    expect([fault.kind, fault.about]).toEqual(["newerWriter", "version 9.9.9"]);
    await older.backups.make("asked");
    await older.close();
    // What asks older programs to read only is not taken back by one that may write.
    const again = await newerProgram({ FORMAT: FORMAT + 1, LEAST_WRITER });
    expect(again.newerProgram).toBeNull();
    await again.close();
    expect((await db.selectFrom("writers").select("format").executeTakeFirstOrThrow()).format).toBe(FORMAT + 1);
  });
});
