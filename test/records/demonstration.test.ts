import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { billOf } from "#contract/records/bill";
import { paidOf } from "#contract/records/money";
import { OPEN_STATES } from "#contract/records/ticketStates";
import { COVERS } from "#engine/ball/covers";
import { finishText } from "#engine/surface/finish";
import { makeDemonstration } from "#records/demonstration/makeDemonstration";
import { openRecords } from "#records/openRecords";
import type { Records } from "#records/records";

/* That the shop hangs together is asked of what came out of its records, as anybody would find it. */

const TODAY = "2026-05-31";
const root = mkdtempSync(join(tmpdir(), "gritwright-demonstration-"));

async function made(name: string, seed: number): Promise<Records> {
  const folder = join(root, name);
  await makeDemonstration({ folder, seed, today: TODAY, programVersion: "0.0.0-test", say: () => undefined });
  return openRecords({
    folder,
    now: () => Date.parse("2026-06-01T12:00:00.000Z"),
    randomBytes: (n) => new Uint8Array(n),
    programVersion: "0.0.0-test",
  });
}

async function exported(records: Records): Promise<string> {
  return (await records.lists.exportAll()).map(({ name, text }) => `${name}\n${text}`).join("\n");
}

let records: Records;
// biome-ignore lint/suspicious/noExplicitAny: the export is plain JSON
let all: Record<string, any[]>;
beforeAll(async () => {
  records = await made("first", 1);
  const everything = (await records.lists.exportAll()).find(({ name }) => name === "everything.json");
  const document = JSON.parse(everything?.text ?? "{}");
  all = document.things ?? document;
}, 240_000);
afterAll(async () => {
  await records.close();
  rmSync(root, { recursive: true, force: true });
});

describe("the demonstration shop", () => {
  it("is the same to the last byte from the same seed and day, and another from another seed", { timeout: 240_000 }, async () => {
    const [same, other] = [await made("same", 1), await made("other", 2)];
    expect((await exported(same)) === (await exported(records))).toBe(true);
    expect((await exported(other)) === (await exported(records))).toBe(false);
    await Promise.all([same.close(), other.close()]);
  });

  it("is generous: 40 bowlers, 120 balls, two years of visits with work, readings, shots, stock and money", async () => {
    expect([all.bowlers.length, all.balls.length]).toEqual([40, 120]);
    const arrived = all.visits.map(({ arrivedAt }) => arrivedAt).sort();
    expect([arrived[0] < "2024-09", arrived[arrived.length - 1] > "2026-05-24"]).toEqual([true, true]);
    for (const [kind, least] of Object.entries({
      visits: 200,
      tickets: 300,
      stagesDone: 1000,
      readings: 1000,
      shotNotes: 100,
      stockMovements: 500,
      payments: 200,
      prices: 3,
    }))
      expect(all[kind].length, kind).toBeGreaterThan(least);
  });

  it("says that it is invented, and holds numbers kept free for fiction only", async () => {
    expect((await records.settings.get()).data).toBe("invented");
    // 555-0100 to 555-0199 are not given to anybody (North American Numbering Plan; common knowledge). *.example: RFC 2606.
    for (const { phone, email } of all.bowlers) {
      expect(phone).toMatch(/^555-01\d\d$/);
      expect(email).toMatch(/@shop\.example$/);
    }
    expect(new Set(all.bowlers.map(({ name }) => name)).size).toBe(40);
    expect(new Set(all.balls.map(({ name }) => name)).size).toBe(120);
  });

  it("puts on no finish outside a cover's usual range, and never below what the trade never does", () => {
    const covers = new Map(all.balls.map(({ id, cover }) => [id, cover as keyof typeof COVERS]));
    for (const { ballId, finishAfter } of all.tickets) {
      const cover = covers.get(ballId);
      if (cover === undefined) throw new Error(`a ticket without a ball: ${ballId}`);
      expect(COVERS[cover].usual.map(finishText)).toContain(finishAfter);
    }
  });

  it("each ball's finish before is the one that it left the shop with the time before", () => {
    for (const ball of all.balls) {
      const tickets = all.tickets
        .filter(({ ballId, readyAt }) => ballId === ball.id && readyAt !== null)
        .sort((a, b) => (a.readyAt < b.readyAt ? -1 : 1));
      for (let i = 1; i < tickets.length; i++) expect(tickets[i].finishBefore).toBe(tickets[i - 1].finishAfter);
    }
  });

  it("games are written down whenever a ball comes in, at the pace of a league and practice: up to four a week", () => {
    const weeks = 730 / 7;
    for (const { games } of all.balls) {
      const counted = games.reduce((sum: number, entry: { games: number }) => sum + entry.games, 0);
      expect(counted / weeks).toBeGreaterThan(0.5);
      expect(counted / weeks).toBeLessThan(4.2);
    }
  });

  it("sanded tracks read smoother before the work than after it, more often than not by far", () => {
    const um = (ticketId: string, when: string) =>
      all.readings.find((r) => r.ticketId === ticketId && r.when === when && r.place === "track")?.raUm ?? null;
    const pairs = all.tickets
      .filter(({ finishBefore, finishAfter }) => finishBefore === finishAfter && !finishAfter.includes("polish"))
      .map(({ id }) => [um(id, "before"), um(id, "after")])
      .filter((pair): pair is [number, number] => pair[0] !== null && pair[1] !== null);
    expect(pairs.length).toBeGreaterThan(30);
    expect(pairs.filter(([before, after]) => before < after).length / pairs.length).toBeGreaterThan(0.8);
  });

  it("every closed visit is paid to the cent, and nothing is paid twice", () => {
    for (const visit of all.visits.filter(({ state }) => state === "closed")) {
      expect(paidOf(all.payments.filter(({ visitId }) => visitId === visit.id))).toBe(billOf(visit).totalCents);
    }
  });

  it("what the stages used has left the stock", () => {
    for (const item of all.stockItems) {
      const sum = all.stockMovements.filter(({ stockItemId }) => stockItemId === item.id).reduce((total, { change }) => total + change, 0);
      expect(item.quantity).toBeCloseTo(sum, 6);
      expect(item.quantity).toBeGreaterThan(0);
    }
  });

  it("has a queue with something in it, and nothing that has lain there for weeks", () => {
    const open = all.tickets.filter(({ state }) => OPEN_STATES.includes(state));
    expect(open.length).toBeGreaterThan(5);
    expect(new Set(open.map(({ state }) => state)).size).toBeGreaterThan(2);
    for (const { receivedAt } of open) expect(receivedAt > "2026-05-24").toBe(true);
  });

  it("shots end on the lane, most of them near the pocket, and strikes and leaves both occur", () => {
    const leaves = all.shotNotes.map(({ leave }) => leave.length);
    expect(leaves.filter((pins) => pins === 0).length / leaves.length).toBeGreaterThan(0.15);
    expect(leaves.filter((pins) => pins === 0).length / leaves.length).toBeLessThan(0.85);
    for (const { speedMph } of all.shotNotes) expect(speedMph === null || (speedMph > 9 && speedMph < 21)).toBe(true);
  });
});

describe("making it", () => {
  it("leaves a shop that is there alone, and clears away one that was left half made", { timeout: 240_000 }, async () => {
    const folder = join(root, "there");
    mkdirSync(folder);
    const asked = { folder, seed: 1, today: TODAY, programVersion: "0.0.0-test", say: () => undefined };
    await makeDemonstration(asked);
    expect(existsSync(join(folder, "live"))).toBe(false);
    rmSync(folder, { recursive: true });
    mkdirSync(`${folder}.making`);
    writeFileSync(join(`${folder}.making`, "half"), "");
    await makeDemonstration(asked);
    expect([existsSync(`${folder}.making`), existsSync(join(folder, "half"))]).toEqual([false, false]);
  });
});
