import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { sql } from "kysely";
import { afterAll, afterEach, describe, expect, it } from "vitest";
import type { RecordsFault } from "#contract/records/fault";
import { shopFolder } from "#records/folder";
import { moveRecords, takeBack } from "#records/move/move";
import { openRecords } from "#records/openRecords";
import type { Records, RecordsParts } from "#records/records";
import { PNG } from "./pictures.ts";
import { testPostgres } from "./postgres.ts";
import { databaseOf, onTheCounter, refusal, type TestShop, testShop, twoShops } from "./shop.ts";

const postgres = await testPostgres();
afterAll(() => postgres?.stop());

const begun: (() => void | Promise<void>)[] = [];
afterEach(async () => {
  for (const end of begun.splice(0).reverse()) await end();
});

/** Places of a kind; new ones hold nothing. */
const FOLDER = async (): Promise<string> => {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-move-"));
  begun.push(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};
const SERVER = async (): Promise<string> => (await postgres?.newDatabase()) ?? "";
const WAYS: readonly (readonly [string, () => Promise<string>, () => Promise<string>])[] = [
  ["a folder to a folder", FOLDER, FOLDER],
  ...(postgres === null
    ? []
    : ([
        ["a folder to PostgreSQL", FOLDER, SERVER],
        ["PostgreSQL to a folder", SERVER, FOLDER],
        ["PostgreSQL to PostgreSQL", SERVER, SERVER],
      ] as const)),
];

function isServer(place: string): boolean {
  return place.startsWith("postgres://");
}

/** A shop with something of everything that moves in its own way: rows by the hundred, files, an erasure, a kept answer. */
async function shopAt(place: string): Promise<TestShop> {
  const shop = await testShop(isServer(place) ? { postgres: place } : { folder: place });
  begun.push(() => shop.end());
  const { records, by } = shop;
  const { ball, visit, ticket } = await onTheCounter(shop);
  await records.photos.add({ ballId: ball.id, of: "serial" }, PNG, { by });
  await records.profileFiles.add({ ballId: ball.id, name: "track.smd" }, Buffer.from("a tester's"), { by });
  const csv = `name\n${Array.from({ length: 450 }, (_, i) => `Invented ${i}`).join("\n")}\n`;
  await records.lists.apply("bowlers", csv, undefined, { by, once: { key: "k1", route: "POST /imports", bodyHash: "a".repeat(64) } });
  await records.tickets.create({ visitId: visit.id, ballId: ball.id, receivedAt: "2026-05-31T18:00:00.000Z", reworkOf: ticket.id }, { by });
  await records.accounts.open(by, { signInName: "owner", role: "owner", password: "a heron stands in the reeds" }, by);
  await records.accounts.signIn({ signInName: "owner", password: "a heron stands in the reeds", address: "127.0.0.1" });
  const gone = await records.bowlers.create({ name: "Gone Plover" }, { by });
  await records.personal.erase(gone.id, { by });
  return shop;
}

/** Opens what lies at a place, with a folder for what a server's folder holds. */
async function openAt(place: string, { now, randomBytes, programVersion, hasher }: RecordsParts): Promise<Records> {
  const folder = isServer(place) ? await FOLDER() : place;
  const records = await openRecords({
    folder,
    ...(isServer(place) ? { postgres: place } : {}),
    ...(hasher === undefined ? {} : { hasher }),
    now,
    randomBytes,
    programVersion,
  });
  begun.push(() => records.close());
  return records;
}

/** Everything that a shop sees, and the bytes of its files. */
async function everything(records: Records): Promise<unknown> {
  const files = (await records.lists.exportAll()).map(({ text }) => text.replace(/"madeAt": "[^"]*"/, ""));
  const photos = (await records.photos.list()).items.map(({ id }) => records.photos.bytes(id));
  const profiles = (await records.profileFiles.list()).items.map(({ id }) => records.profileFiles.bytes(id));
  return [files, (await Promise.all([...photos, ...profiles])).map((bytes) => Buffer.from(bytes).toString("hex"))];
}

/** A shop to be moved, closed, and what is asked. */
async function ready(newSource: () => Promise<string>, newTarget: () => Promise<string>) {
  const [from, to] = [await newSource(), await newTarget()];
  const shop = await shopAt(from);
  const before = await everything(shop.records);
  await shop.records.close();
  const { now, randomBytes } = shop.parts;
  return { shop, before, asked: { from, to, now, randomBytes, tell: () => {} } };
}

describe.each(WAYS)("a move from %s", (_, newSource, newTarget) => {
  it("carries everything, and freezes what was left", async () => {
    const { shop, before, asked } = await ready(newSource, newTarget);
    const { counts, files, missing } = await moveRecords(asked);
    expect(counts).toMatchObject({ settings: 1, bowlers: 452, tickets: 2, once: 1, imports: 1, terms: expect.any(Number) });
    expect([files, missing]).toEqual([2, []]);
    const moved = await openAt(asked.to, shop.parts);
    expect(await everything(moved)).toEqual(before);
    // Whoever may come in still may; nobody is in.
    expect(await moved.accounts.list()).toMatchObject([{ signInName: "owner", role: "owner" }]);
    expect(await moved.accounts.sessions(null)).toEqual([]);
    const fault = await refusal<RecordsFault>(shop.reopen());
    expect(fault.kind).toBe("frozen");
    expect(fault.message).toMatch(/moved to .* gritwright move --take-back --from/);
    await moved.close();
    expect((await moveRecords(asked)).counts).toBeNull();
    await takeBack(asked.from, asked);
    expect(await everything(await shop.reopen())).toEqual(before);
  });

  it("cut anywhere goes on where it was; until it has ended neither side opens", { timeout: 60_000 }, async () => {
    const { shop, before, asked } = await ready(newSource, newTarget);
    const all: string[] = [];
    let cuts = 0;
    for (let isOver = false; !isOver; ) {
      const seen: string[] = [];
      try {
        await moveRecords({
          ...asked,
          // The first batch of each call arrives, and then the power goes.
          tell: (what, count) => {
            seen.push(`${what} ${count}`);
            throw new Error("the power went");
          },
        });
        isOver = true;
      } catch (fault) {
        expect((fault as Error).message).toBe("the power went");
        cuts += 1;
        all.push(...seen);
        for (const place of cuts === 2 ? [asked.from, asked.to] : [])
          expect((await refusal<RecordsFault>(openAt(place, shop.parts))).kind).toBe("frozen");
      }
    }
    // Bowlers go over in three batches; none is carried twice.
    expect(all.filter((what) => what.startsWith("bowlers"))).toEqual(["bowlers 200", "bowlers 200", "bowlers 52"]);
    expect(cuts).toBeGreaterThan(12);
    expect(await everything(await openAt(asked.to, shop.parts))).toEqual(before);
  });
});

describe.each(WAYS)("a move from %s", (_, newSource, newTarget) => {
  it("cut before the first row is over freezes the source only once nothing can be written at the target", {
    timeout: 60_000,
  }, async () => {
    const { shop, before, asked } = await ready(newSource, newTarget);
    const { postgres: _from, ...parts } = shop.parts;
    const target = isServer(asked.to) ? { ...parts, postgres: asked.to } : { ...parts, folder: asked.to };
    let frozen = 0;
    for (let looks = 0; ; looks++) {
      let left = looks;
      const now = () => {
        left -= 1;
        if (left < 0) throw new Error("the power went");
        return asked.now();
      };
      const tell = () => {
        throw new Error("the power went, later");
      };
      const cut = await refusal<Error>(moveRecords({ ...asked, now, tell }));
      const db = databaseOf(shop.parts);
      const isFrozen = (await db.selectFrom("moves").selectAll().execute()).length > 0;
      await db.destroy();
      if (isFrozen) {
        frozen += 1;
        expect((await refusal<RecordsFault>(openRecords(target))).kind).toBe("frozen");
      }
      if (cut.message === "the power went, later") break;
      expect(cut.message).toBe("the power went");
      expect(looks).toBeLessThan(50);
    }
    expect(frozen).toBe(1);
    await moveRecords(asked);
    expect(await everything(await openAt(asked.to, shop.parts))).toEqual(before);
  });

  it("cut and taken back is begun anew, with what was written since", async () => {
    const { shop, asked } = await ready(newSource, newTarget);
    const tell = (what: string) => {
      if (what === "balls") throw new Error("the power went");
    };
    await expect(moveRecords({ ...asked, tell })).rejects.toThrow("the power went");
    await takeBack(asked.from, asked);
    const open = await shop.reopen();
    const { items } = await open.bowlers.list({ limit: 1 });
    await open.bowlers.change(items[0].id, { name: "Changed since" }, { by: shop.by, expectedVersion: items[0].version });
    const since = await everything(open);
    await open.close();
    await moveRecords(asked);
    expect(await everything(await openAt(asked.to, shop.parts))).toEqual(since);
  });
});

/** Both kinds of places, on either side. */
const BOTH = postgres === null ? WAYS : WAYS.slice(1, 3);

describe.each(BOTH)("a move from %s", (_, newSource, newTarget) => {
  it("is refused while somebody has the records open, and freezes nothing", async () => {
    const { shop, asked } = await ready(newSource, newTarget);
    await shop.reopen();
    expect((await refusal<RecordsFault>(moveRecords(asked))).kind).toBe("busy");
    await shop.reopen();
  });

  it("into a place where something else lies is refused, and freezes nothing; a shop in which nobody has written is nothing", async () => {
    const { shop, asked } = await ready(newSource, newTarget);
    const there = await openAt(asked.to, shop.parts);
    const by = (await there.people.list()).items[0].id;
    await there.close();
    const again = await openAt(asked.to, shop.parts);
    await again.houses.create({ name: "Something" }, { by });
    await again.close();
    expect((await refusal<RecordsFault>(moveRecords(asked))).problems[0].path).toBe("to");
    await shop.reopen();
  });

  it("takes the place of a shop in which nobody has written anything", async () => {
    const { shop, before, asked } = await ready(newSource, newTarget);
    await (await openAt(asked.to, shop.parts)).close();
    await moveRecords(asked);
    expect(await everything(await openAt(asked.to, shop.parts))).toEqual(before);
  });

  it("tells a row that did not arrive as it was, and goes on being no shop", async () => {
    const { shop, asked } = await ready(newSource, newTarget);
    const cut = moveRecords({
      ...asked,
      tell: (what) => {
        if (what === "once") throw new Error("the power went");
      },
    });
    await expect(cut).rejects.toThrow("the power went");
    const { postgres: _from, ...parts } = shop.parts;
    const db = databaseOf(isServer(asked.to) ? { ...parts, postgres: asked.to } : { ...parts, folder: asked.to });
    await sql`update balls set version = 7`.execute(db);
    await db.destroy();
    const fault = await refusal<RecordsFault>(moveRecords(asked));
    expect([fault.kind, fault.about]).toEqual(["damaged", expect.stringMatching(/^balls /)]);
    expect((await refusal<RecordsFault>(openAt(asked.to, shop.parts))).kind).toBe("frozen");
  });
});

describe("a move", () => {
  it("knows a folder again, however its path is written", async () => {
    const { asked } = await ready(FOLDER, FOLDER);
    const [from, to] = [relative(process.cwd(), asked.from), relative(process.cwd(), asked.to)];
    await moveRecords({ ...asked, from, to });
    expect((await moveRecords(asked)).counts).toBeNull();
  });

  it.runIf(postgres !== null)("carries every shop of a database, and what a clock set back has put out of order", async () => {
    const { west, east } = await twoShops(await SERVER());
    begun.push(west.end, east.end);
    const { visit, ball, ticket } = await onTheCounter(west);
    const at = "2026-05-31T18:00:00.000Z";
    const rework = await west.records.tickets.create(
      { visitId: visit.id, ballId: ball.id, receivedAt: at, reworkOf: ticket.id },
      { by: west.by },
    );
    await east.records.houses.create({ name: "East's" }, { by: east.by });
    await east.records.close();
    await west.records.close();
    const db = databaseOf(west.parts);
    // The first ticket now has the later id, and the one that refers to it comes before it.
    await db.updateTable("tickets").set({ reworkOf: null }).where("id", "=", rework.id).execute();
    await db.updateTable("tickets").set({ reworkOf: rework.id }).where("id", "=", ticket.id).execute();
    await db.destroy();
    const [from, to] = [west.parts.postgres ?? "", await FOLDER()];
    await moveRecords({ ...west.parts, from, to, tell: () => {} });
    const { postgres: _from, ...parts } = west.parts;
    const moved = databaseOf({ ...parts, folder: to });
    const rows = await moved.selectFrom("tickets").select(["id", "reworkOf"]).orderBy("id").execute();
    expect(rows).toEqual([
      { id: ticket.id, reworkOf: rework.id },
      { id: rework.id, reworkOf: null },
    ]);
    expect(await moved.selectFrom("houses").select("id").execute()).toHaveLength(1);
    await moved.destroy();
  });

  it("from nowhere, or to where it lies, is refused and makes nothing", async () => {
    const [from, to] = [join(await FOLDER(), "nowhere"), await FOLDER()];
    const parts = { now: Date.now, randomBytes: (count: number) => new Uint8Array(count), tell: () => {} };
    expect((await refusal<RecordsFault>(moveRecords({ ...parts, from, to }))).kind).toBe("notFound");
    expect(existsSync(from)).toBe(false);
    expect(existsSync(shopFolder(to).database)).toBe(false);
    expect((await refusal<RecordsFault>(moveRecords({ ...parts, from: to, to }))).problems[0].path).toBe("to");
    expect((await refusal<RecordsFault>(takeBack(from, parts))).kind).toBe("notFound");
  });

  it("elsewhere than it was begun is refused; what was never moved cannot be taken back", async () => {
    const shop = await shopAt(await FOLDER());
    await shop.records.close();
    const asked = { ...shop.parts, from: shop.parts.folder, to: await FOLDER(), tell: () => {} };
    expect((await refusal<RecordsFault>(takeBack(asked.from, asked))).kind).toBe("refused");
    await moveRecords(asked);
    expect((await refusal<RecordsFault>(moveRecords({ ...asked, to: await FOLDER() }))).kind).toBe("frozen");
  });
});
