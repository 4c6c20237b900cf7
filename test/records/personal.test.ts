import { appendFileSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
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
    { findings: "Sandgrouse says no", plan: { madeAt: at, engineVersion: "1", seed: 1, inputs } },
    { by, expectedVersion: 1 },
  );
  await records.stagesDone.create(
    { ticketId: ticket.id, personId: by, initials: "T", doneAt: at, what: "2000", note: "for Ottilie" },
    { by },
  );
  await records.readings.create({ ballId: ball.id, at, when: "after", place: "track", how: "tester", raUm: 0.5, note: "Sparrow" }, { by });
  await records.shotNotes.create({ bowlerId: bowler.id, at, note: "Grandmother watched" }, { by });
  await records.photos.add({ ticketId: ticket.id, of: "condition", note: "Ottilie" }, PNG, { by });
  const once = { key: "k1", route: "POST /bowlers", bodyHash: "c".repeat(64) };
  await records.bowlers.change(bowler.id, { address: "1 Sparrow Lane" }, { by, expectedVersion: 1, once });
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

  it("keeps the work and the money, without the person", async () => {
    const { records, by } = shop;
    const { bowler, ball, visit, ticket, once } = await leaveTraces(shop);
    await records.personal.erase(bowler.id, { by });
    expect(await records.tickets.get(ticket.id)).toMatchObject({ ballId: ball.id, complaint: "", findings: "", plan: null });
    expect((await records.payments.list({ where: { visitId: visit.id } })).items).toMatchObject([{ cents: 2500, note: "" }]);
    expect(await records.balls.get(ball.id)).toMatchObject({ serial: "QX-7731 904", bowlerId: null, owners: [] });
    expect((await records.readings.list({ where: { ballId: ball.id } })).items).toMatchObject([{ raUm: 0.5 }]);
    expect((await records.shotNotes.list()).items).toEqual([]);
    expect(await records.search.find("ottilie")).toEqual({ bowlers: [], balls: [] });
    // A retry gets no kept answer, and is not done again either.
    const retry = records.bowlers.change(bowler.id, { address: "1 Sparrow Lane" }, { by, expectedVersion: 1, once });
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
    await records.personal.erase(bowler.id, { by });
    expect(await records.bowlers.get(other.id)).toEqual(other);
    expect(await records.balls.get(ball.id)).toEqual(ball);
    expect((await records.search.find("0199")).bowlers).toEqual([other]);
  });

  it.runIf(postgres !== null)("does the same on PostgreSQL", async () => {
    const onServer = await testShop({ postgres: (await postgres?.newDatabase()) ?? "" });
    const { bowler, ball } = await leaveTraces(onServer);
    await onServer.records.personal.erase(bowler.id, { by: onServer.by });
    const files = await onServer.records.lists.exportAll();
    for (const trace of TRACES) for (const { name, text } of files) expect(text.includes(trace), `${trace} in ${name}`).toBe(false);
    expect((await onServer.records.balls.get(ball.id)).name).toBe("(erased)");
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
  expect(document.tickets).toMatchObject([{ id: ticket.id, plan: { inputs: { bowler: { name: "Ottilie Sandgrouse" } } } }]);
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

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });
}
