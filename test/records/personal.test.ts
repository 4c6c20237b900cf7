import { appendFileSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "kysely";
import pg from "pg";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { filesInFolder } from "#records/files/inFolder";
import { PNG, png, pngChunk } from "./pictures.ts";
import { testPostgres } from "./postgres.ts";
import { databaseOf, onTheCounter, refusal, type TestShop, testShop } from "./shop.ts";

let shop: TestShop;
beforeEach(async () => {
  shop = await testShop();
});
afterEach(() => shop.end());

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

/** Everything that could tell who she was; each long or odd enough not to stand by chance in an id or a time of day. */
const TRACES = ["Sandgrouse", "sandgrouse", "Ottilie", "(555)", "0101-234", "0101234", "Tuesdays", "Hooks early", "Grandmother", "Sparrow"];

/** A bowler of whom there is something everywhere. */
async function leaveTraces({ records, by }: Pick<TestShop, "records" | "by">) {
  const { bowler, ball, visit, ticket } = await onTheCounter({ records, by });
  const at = "2026-05-31T19:00:00.000Z";
  await records.balls.change(ball.id, { name: "Ottilie's Heron", notes: "From her Grandmother" }, { by, expectedVersion: 1 });
  const inputs = { gritwright: 1, bowler: { name: "Ottilie Sandgrouse" }, ball: { cover: "solid", finish: 2000 } };
  await records.tickets.change(
    ticket.id,
    { findings: "Sandgrouse says no", playedOn: { night: "tuesday" }, plan: { madeAt: at, engineVersion: "1", seed: 1, inputs } },
    { by, expectedVersion: 1 },
  );
  await records.stagesDone.create(
    { ticketId: ticket.id, personId: by, initials: "T", doneAt: at, what: "2000", note: "for Ottilie" },
    { by },
  );
  await records.stagesDone.create({ ticketId: ticket.id, personId: by, initials: "T", doneAt: at, what: "Ottilie's usual 2000" }, { by });
  await records.readings.create({ ballId: ball.id, at, when: "after", place: "track", how: "tester", raUm: 0.5, note: "Sparrow" }, { by });
  await records.readings.create({ ballId: ball.id, at, when: "after", place: "where Sandgrouse holds it", how: "tester" }, { by });
  await records.visits.change(
    visit.id,
    {
      charges: [
        { what: "Ottilie's resurface", eachCents: 2500 },
        { what: "Resurface", eachCents: 2000 },
      ],
    },
    { by, expectedVersion: 1 },
  );
  await records.tickets.change(
    ticket.id,
    {
      stages: [{ what: "as for Sandgrouse" }, { what: "2000" }],
      stops: [{ at, why: "crack", clearedAt: at, clearedWhy: "Ottilie has seen it" }],
      keptAsIs: [{ at, places: ["track"], why: "Grandmother likes it so" }],
      besidesWhy: "Sparrow wants it by Tuesdays",
    },
    { by, expectedVersion: 2 },
  );
  // Brought in before anybody had said whose it was.
  const unknown = await records.visits.create({ arrivedAt: at, currency: "USD", note: "Left by Grandmother" }, { by });
  await records.tickets.create(
    { visitId: unknown.id, ballId: ball.id, receivedAt: at, complaint: "Hooks early", findings: "Sparrow" },
    { by },
  );
  await records.shotNotes.create({ ballId: ball.id, at, note: "Grandmother threw it" }, { by });
  // On other things of the shop, by her whole name, her number, her address.
  const pads = await records.stockItems.create({ name: "Pads", kind: "pad", number: 2000, unit: "uses" }, { by });
  await records.stockMovements.create({ stockItemId: pads.id, at, change: -1, why: "used", note: "for OTTILIE SANDGROUSE" }, { by });
  await records.houses.create({ name: "Invented lanes", notes: "ask +1 (555) 0101-234 or ottilie@sandgrouse.example" }, { by });
  await records.bowlers.change(bowler.id, { email: "ottilie@sandgrouse.example" }, { by, expectedVersion: 1 });
  await records.shotNotes.create({ bowlerId: bowler.id, at, note: "Grandmother watched" }, { by });
  await records.photos.add({ ticketId: ticket.id, of: "condition", note: "Ottilie" }, PNG, { by });
  const once = { key: "k1", route: "POST /bowlers", bodyHash: "c".repeat(64) };
  await records.bowlers.change(bowler.id, { address: "1 Sparrow Lane" }, { by, expectedVersion: 2, once });
  await records.payments.create(
    { visitId: visit.id, at, kind: "payment", cents: 2500, currency: "USD", method: "cash", note: "Ottilie paid" },
    { by },
  );
  return { bowler, ball, visit, ticket, once };
}

describe("erasing a bowler", () => {
  it("leaves no trace in any file of the shop's folder, deleted pages and the log of writes included", async () => {
    const { records, by, parts } = shop;
    const { bowler } = await leaveTraces(shop);
    await records.personal.erase(bowler.id, { by });
    const files = filesUnder(parts.folder).map((path) => ({ path, text: readFileSync(path).toString("latin1") }));
    expect(files.map(({ path }) => path.slice(parts.folder.length + 1)).sort()).toContain(join("live", "records.sqlite"));
    for (const trace of TRACES) for (const { path, text } of files) expect(text.includes(trace), `${trace} in ${path}`).toBe(false);
    expect(readdirSync(join(parts.folder, "live", "photos"))).toEqual([]);
  });

  it("leaves a picture that also hangs on somebody else's ticket, and takes it with the last", async () => {
    const { records, by, parts } = shop;
    const first = await onTheCounter(shop);
    const other = await records.bowlers.create({ name: "Another" }, { by });
    const ball = await records.balls.create({ name: "Other ball", cover: "solid", bowlerId: other.id }, { by });
    await records.photos.add({ ticketId: first.ticket.id, of: "condition" }, PNG, { by });
    const kept = await records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by });
    await records.personal.erase(first.bowler.id, { by });
    expect(Buffer.from(await records.photos.bytes(kept.id))).toEqual(PNG);
    await records.personal.erase(other.id, { by });
    expect(readdirSync(join(parts.folder, "live", "photos"))).toEqual([]);
  });

  it("names the copies that still hold the bowler, and by when they will have gone", async () => {
    const { records, by, parts } = shop;
    // Made before she was known: it does not hold her.
    await records.backups.make("asked");
    const { bowler } = await leaveTraces(shop);
    const { made } = await records.backups.keepUp();
    const asked = await records.backups.make("asked");
    mkdirSync(join(parts.folder, "before-restore-2026-05-31T18-30-00.000Z"));
    const { stillIn } = await records.personal.erase(bowler.id, { by });
    expect(stillIn).toEqual([
      {
        name: "before-restore-2026-05-31T18-30-00.000Z",
        kind: "before restore",
        madeAt: "2026-05-31T18:30:00.000Z",
        goneBy: "2026-06-30T18:30:00.000Z",
      },
      { name: asked.name, kind: "backup", madeAt: asked.madeAt, goneBy: null },
      // A Sunday, and the last of its month: no other of May 2026 will be there after it, and 24 months are kept;
      // its photos for thirty days more, and one until the backup that they go with.
      { name: made?.name, kind: "backup", madeAt: made?.madeAt, goneBy: "2028-06-01T00:00:00.000Z" },
    ]);
  });

  it("keeps the work and the money, without the person", async () => {
    const { records, by } = shop;
    const { bowler, ball, visit, ticket, once } = await leaveTraces(shop);
    await records.personal.erase(bowler.id, { by });
    expect(await records.tickets.get(ticket.id)).toMatchObject({
      ballId: ball.id,
      complaint: "",
      findings: "",
      plan: null,
      playedOn: null,
    });
    expect((await records.payments.list({ where: { visitId: visit.id } })).items).toMatchObject([{ cents: 2500, note: "" }]);
    expect(await records.balls.get(ball.id)).toMatchObject({ serial: "QX-7731 904", bowlerId: null, owners: [] });
    expect((await records.readings.list({ where: { ballId: ball.id } })).items).toMatchObject([
      { place: "(erased)" },
      { raUm: 0.5, place: "track" },
    ]);
    expect((await records.shotNotes.list()).items).toMatchObject([{ ballId: ball.id, note: "" }]);
    expect((await records.visits.get(visit.id)).charges).toMatchObject([
      { what: "(erased)", eachCents: 2500 },
      { what: "Resurface", eachCents: 2000 },
    ]);
    expect((await records.tickets.get(ticket.id)).stages).toMatchObject([{ what: "(erased)" }, { what: "2000" }]);
    expect((await records.stockMovements.list()).items).toMatchObject([{ change: -1, note: "for (erased)" }]);
    expect(await records.search.find("ottilie")).toEqual({ bowlers: [], balls: [] });
    // A retry gets no kept answer, and is not done again either.
    const retry = records.bowlers.change(bowler.id, { address: "1 Sparrow Lane" }, { by, expectedVersion: 2, once });
    expect((await refusal<RecordsFault>(retry)).kind).toBe("notFound");
    const { items } = await records.audit.list({ where: { thingId: bowler.id } });
    expect(items[0]).toMatchObject({ did: "erase", by });
  });

  it("that the power interrupted after the ledger is ended at the next start", async () => {
    const { by, parts } = shop;
    const { bowler } = await leaveTraces(shop);
    appendFileSync(
      join(parts.folder, "erasures.jsonl"),
      `${JSON.stringify({ bowlerId: bowler.id, at: "2026-05-31T20:00:00.000Z", by })}\n{"bowlerId":"cut sho`,
    );
    const again = await shop.reopen();
    expect(await again.bowlers.get(bowler.id)).toMatchObject({ name: "(erased)", erasedAt: "2026-05-31T20:00:00.000Z" });
  });

  it("others are left alone", async () => {
    const { records, by } = shop;
    const { bowler } = await leaveTraces(shop);
    const other = await records.bowlers.create({ name: "Ottokar Finch", phone: "555 0199" }, { by });
    const ball = await records.balls.create({ name: "Siskin", cover: "pearl", bowlerId: other.id, notes: "keep" }, { by });
    // Of the same name; what speaks of her may speak of the other.
    const namesake = await records.bowlers.create({ name: "Ottilie Sandgrouse", notes: "Another one" }, { by });
    const spoken = await records.houses.create({ name: "House", notes: "Ottilie Sandgrouse likes it" }, { by });
    await records.personal.erase(bowler.id, { by });
    expect(await records.bowlers.get(other.id)).toEqual(other);
    expect(await records.balls.get(ball.id)).toEqual(ball);
    expect(await records.bowlers.get(namesake.id)).toEqual(namesake);
    expect(await records.houses.get(spoken.id)).toEqual(spoken);
    expect((await records.search.find("0199")).bowlers).toEqual([other]);
  });

  it.runIf(postgres !== null)("does the same on PostgreSQL", async () => {
    const onServer = await testShop({ postgres: (await postgres?.newDatabase()) ?? "" });
    const { bowler, ball } = await leaveTraces(onServer);
    // So many that the server notes values of theirs, to plan by.
    for (let i = 0; i < 20; i += 1)
      await onServer.records.bowlers.create({ name: `Invented Finch ${i}`, notes: "x".repeat(i) }, { by: onServer.by });
    const db = databaseOf(onServer.parts);
    await sql`analyze`.execute(db);
    await db.destroy();
    // What stands in another's way of seeing keeps old rows: it is waited for.
    const looksOn = new pg.Client(onServer.parts.postgres);
    await looksOn.connect();
    await looksOn.query("begin isolation level repeatable read");
    await looksOn.query("select count(*) from gritwright.settings");
    setTimeout(() => void looksOn.query("commit").then(() => looksOn.end()), 3000);
    expect(await filesOfServer(onServer, "Sandgrouse")).not.toEqual([]);
    await onServer.records.personal.erase(bowler.id, { by: onServer.by });
    const files = await onServer.records.lists.exportAll();
    for (const trace of TRACES) for (const { name, text } of files) expect(text.includes(trace), `${trace} in ${name}`).toBe(false);
    expect((await onServer.records.balls.get(ball.id)).name).toBe("(erased)");
    // Indexes, TOAST and what is known of values for planning lie in files of their own.
    for (const trace of TRACES) expect(await filesOfServer(onServer, trace), trace).toEqual([]);
    await onServer.end();
  });
});

it("a bowler's data are handed out whole, and that they were is noted", async () => {
  const { records, by } = shop;
  const { bowler, ticket } = await leaveTraces(shop);
  const { document, photos } = await records.personal.exportOf(bowler.id, { by });
  const text = JSON.stringify(document);
  for (const trace of ["Ottilie Sandgrouse", "Tuesdays", "Hooks early", "Grandmother", "1 Sparrow Lane", "Ottilie paid", "for Ottilie"])
    expect(text).toContain(trace);
  expect(document.tickets).toMatchObject([
    { id: ticket.id, plan: { inputs: { bowler: { name: "Ottilie Sandgrouse" } } } },
    { complaint: "Hooks early", bowlerId: null },
  ]);
  expect(photos.map(({ bytes }) => Buffer.from(bytes))).toEqual([PNG]);
  expect((await records.audit.list({ where: { thingId: bowler.id } })).items[0].did).toBe("export");
});

describe("photos", () => {
  it("are kept without what a camera wrote into them", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const told = png(pngChunk("tEXt", Buffer.from("Author\0Ottilie")), pngChunk("eXIf", Buffer.from("MM\0*GPS")));
    const photo = await records.photos.add({ ballId: ball.id, of: "serial" }, Buffer.concat([told, Buffer.from("hung on behind")]), { by });
    expect(Buffer.from(await records.photos.bytes(photo.id))).toEqual(PNG);
    expect(photo).toMatchObject({ type: "image/png", bytes: PNG.length });
    await records.photos.remove(photo.id, { by, expectedVersion: 1 });
    expect(readdirSync(join(parts.folder, "live", "photos"))).toEqual([]);
  });

  it("stay where the same picture was put there again while an older one was going", async () => {
    const files = filesInFolder(join(shop.parts.folder, "live"));
    const db = databaseOf(shop.parts);
    await files.put(db, "photos/same.png", PNG);
    const finish = await files.remove(db, ["photos/same.png", "photos/never-there.png"]);
    await files.put(db, "photos/same.png", PNG);
    await finish();
    expect(Buffer.from((await files.get(db, "photos/same.png")) ?? [])).toEqual(PNG);
    await (await files.remove(db, ["photos/same.png"]))();
    expect(await files.get(db, "photos/same.png")).toBeNull();
    await db.destroy();
  });

  it("of other kinds are refused, whatever they are called", async () => {
    const { records, by } = shop;
    const { ball } = await onTheCounter(shop);
    const svg = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>');
    for (const bytes of [svg, Buffer.alloc(0), PNG.subarray(0, 30), Buffer.from("GIF89a")])
      expect((await refusal<RecordsFault>(records.photos.add({ ballId: ball.id, of: "other" }, bytes, { by }))).kind).toBe("refused");
  });

  it("one that was changed on the disk is told as damaged", async () => {
    const { records, by, parts } = shop;
    const { ball } = await onTheCounter(shop);
    const photo = await records.photos.add({ ballId: ball.id, of: "crack" }, PNG, { by });
    const path = join(parts.folder, "live", "photos", readdirSync(join(parts.folder, "live", "photos"))[0]);
    writeFileSync(path, "not the photo");
    expect((await refusal<RecordsFault>(records.photos.bytes(photo.id))).kind).toBe("damaged");
  });
});

/** Files of the server's database, its log of writes aside, in which a text stands; this machine must be the server's. */
async function filesOfServer({ parts }: TestShop, text: string): Promise<string[]> {
  const db = databaseOf(parts);
  await sql`checkpoint`.execute(db);
  const { rows } = await sql<{ folder: string; oid: string }>`select current_setting('data_directory') as folder,
    (select oid::text from pg_database where datname = current_database()) as oid`.execute(db);
  await db.destroy();
  const [{ folder, oid }] = rows;
  return filesUnder(join(folder, "base", oid)).filter((path) => readFileSync(path).includes(text));
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });
}
