import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { billOf } from "#contract/records/bill";
import { paidOf } from "#contract/records/money";
import { OPEN_STATES } from "#contract/records/ticketStates";
import { COVERS } from "#engine/ball/covers";
import { effectiveRaUm, finishText, parseFinish } from "#engine/surface/finish";
import { makeDemonstration } from "#records/demonstration/makeDemonstration";
import { seenOf } from "#records/demonstration/shots";
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

  it("nobody says of a spare ball that it skids; what skids too far is put no smoother, what hooks too early no duller (common practice)", () => {
    const ra = (finish: string) => effectiveRaUm(parseFinish(finish));
    const told = { hooksLess: 0, hooksEarlyHitsWeak: 0 };
    for (const { ballId, symptoms, finishBefore, finishAfter } of all.tickets) {
      const [symptom] = symptoms as (keyof typeof told)[];
      if (!Object.hasOwn(told, symptom)) continue;
      told[symptom] += 1;
      expect(all.balls.find(({ id }) => id === ballId).job).not.toBe("spare");
      const change = ra(finishAfter) - ra(finishBefore);
      if (symptom === "hooksLess") expect(change).toBeGreaterThanOrEqual(0);
      else expect(change).toBeLessThanOrEqual(0);
    }
    expect(Math.min(...Object.values(told))).toBeGreaterThan(20);
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
    const leaves = all.shotNotes.filter(({ leave }) => leave !== null).map(({ leave }) => leave.length);
    expect(leaves.filter((pins) => pins === 0).length / leaves.length).toBeGreaterThan(0.15);
    expect(leaves.filter((pins) => pins === 0).length / leaves.length).toBeLessThan(0.85);
    for (const { speedMph } of all.shotNotes) expect(speedMph === null || (speedMph > 9 && speedMph < 21)).toBe(true);
  });
});

/** The hour and weekday that a clock in the shop shows, by the platform's own calendar. */
function shopTime(at: string): { readonly weekday: string; readonly minutes: number } {
  const parts = new Intl.DateTimeFormat("en-US", {
    timeZone: "America/Chicago",
    hourCycle: "h23",
    weekday: "short",
    hour: "2-digit",
    minute: "2-digit",
  }).formatToParts(new Date(at));
  const of = (type: string) => parts.find((part) => part.type === type)?.value ?? "";
  return { weekday: of("weekday"), minutes: 60 * Number(of("hour")) + Number(of("minute")) };
}

// biome-ignore lint/suspicious/noExplicitAny: the export is plain JSON
type Row = any;
const by = <Key>(rows: readonly Row[], key: (row: Row) => Key): Map<Key, Row[]> => {
  const found = new Map<Key, Row[]>();
  for (const row of rows) found.set(key(row), [...(found.get(key(row)) ?? []), row]);
  return found;
};

describe("its days are plausible", () => {
  it("people come, pay and fetch, work is signed and promises fall while the shop is open: Monday to Saturday, 10 to 19 (common practice)", () => {
    const moments = [
      ...all.visits.flatMap(({ arrivedAt, promisedFor }) => [arrivedAt, promisedFor]),
      ...all.tickets.flatMap(({ been }) => been.map(({ at }: Row) => at)),
      ...all.stagesDone.flatMap(({ startedAt, doneAt }) => [startedAt, doneAt]),
      ...all.payments.map(({ at }) => at),
    ];
    expect(moments.length).toBeGreaterThan(5000);
    const closed = moments.filter((at) => {
      const { weekday, minutes } = shopTime(at);
      return weekday === "Sun" || minutes < 600 || minutes > 1140;
    });
    expect(closed).toEqual([]);
  });

  it("a promise is kept by most, and never earlier than an hour after the ball came", () => {
    const ready = all.tickets.filter(({ readyAt }) => readyAt !== null);
    const kept = ready.filter(({ readyAt, promisedFor }) => readyAt <= promisedFor);
    expect(kept.length / ready.length).toBeGreaterThan(0.7);
    for (const { arrivedAt, promisedFor } of all.visits)
      expect(Date.parse(promisedFor) - Date.parse(arrivedAt)).toBeGreaterThanOrEqual(3_600_000);
  });

  it("stages are signed in the order of the plan, each once; nobody works two balls at one time; a ball dries before it is cut", () => {
    const signed = by(all.stagesDone, ({ ticketId }) => ticketId);
    for (const { id, stages } of all.tickets) {
      const done = (signed.get(id) ?? []).toSorted((a, b) => (a.doneAt < b.doneAt ? -1 : 1));
      expect(done.map(({ stageId }) => stageId)).toEqual(stages.slice(0, done.length).map((stage: Row) => stage.id));
      const [extract, dryOff] = ["extract", "dryOff"].map((kind) => done.find((one) => one.kind === kind));
      // Two hours to be dry and cool; common practice.
      if (dryOff !== undefined) expect(Date.parse(dryOff.doneAt) - Date.parse(extract?.doneAt)).toBeGreaterThanOrEqual(2 * 3_600_000);
    }
    for (const rows of by(all.stagesDone, ({ personId }) => personId).values()) {
      const inOrder = rows.toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : 1));
      for (let i = 1; i < inOrder.length; i++) expect(inOrder[i].startedAt >= inOrder[i - 1].doneAt).toBe(true);
    }
  });

  it("one bowler carries five balls, most three", () => {
    const counts = [...by(all.balls, ({ bowlerId }) => bowlerId).values()].map(({ length }) => length);
    expect([Math.max(...counts), counts.filter((count) => count === 3).length]).toEqual([5, 37]);
  });

  it("what a shot leaves fits where it was seen: full racks are gutter balls, and the head pin falls where the ball reaches it", () => {
    /* Pins: the head pin stands on board 20; a ball of 8.5 in and a pin of 4.766 in touch within 6.6 in, of boards of 1.0466 in (USBC equipment specifications). */
    const reach = (8.5 / 2 + 4.766 / 2) / 1.0466;
    let hits = 0;
    for (const { boards, leave } of all.shotNotes.filter((note) => note.leave !== null)) {
      const atPins = boards.find(({ atFt }: Row) => atFt === 60)?.board ?? null;
      if (atPins === null) expect(leave).toHaveLength(10);
      else if (Math.abs(atPins - 20) < reach - 1) {
        hits += 1;
        expect(leave).not.toContain(1);
      } else expect(Math.abs(atPins - 20)).toBeLessThan(reach);
    }
    expect(hits).toBeGreaterThan(80);
  });
});

it("of a shot that fell into the gutter nothing is noted after that, though the model goes on", () => {
  const at = (yFt: number, board: number) => ({ yFt, board, offLane: false });
  const shot = {
    samples: [at(15, 8), at(40, 2.5), at(60, 15.5)],
    phases: { breakpoint: { board: 1, yFt: 38 }, speedAtPinsMph: 13.9 },
    gutter: { yFt: 35, side: "right" },
  } as unknown as Parameters<typeof seenOf>[0];
  expect(seenOf(shot)).toEqual({
    boards: [{ atFt: 15, board: 8 }],
    breakpointBoard: null,
    breakpointFt: null,
    speedMph: null,
    speedAt: null,
  });
  expect(seenOf({ ...shot, gutter: null }).boards).toHaveLength(3);
});

describe("its two years add up", () => {
  it("every job that was done is charged by the price list or free with a reason; nothing is left out of the bill", () => {
    const visits = new Map(all.visits.map((visit) => [visit.id, visit]));
    const listed = new Set(all.prices.map(({ name, eachCents }) => `${name} ${eachCents}`));
    let [charged, free] = [0, 0];
    for (const { id, visitId, stages } of all.tickets) {
      const visit: Row = visits.get(visitId);
      const lines = visit.charges.filter(({ ticketId }: Row) => ticketId === id);
      const reasons = visit.free.filter(({ ticketId }: Row) => ticketId === id);
      expect(lines.length > 0 !== reasons.length > 0, `ticket ${id}`).toBe(true);
      for (const { what, eachCents } of lines) expect(listed).toContain(`${what.split(":")[0]} ${eachCents}`);
      for (const { why } of reasons) expect(why).not.toBe("");
      // Oil that was drawn out is on the bill of that ball.
      if (stages.some(({ kind }: Row) => kind === "extract")) expect(lines.some(({ what }: Row) => what.startsWith("Oil"))).toBe(true);
      if (lines.length > 0) charged += 1;
      else free += 1;
    }
    expect(charged).toBeGreaterThan(10 * free);
  });

  it("bills, worked by hand from their lines, are what was paid and what is open, to the cent", () => {
    // Sales tax of 8.25 % on the whole bill, half a cent up.
    const billed = all.visits.reduce((sum, visit) => sum + billOf(visit).totalCents, 0);
    const plain = all.visits.filter(({ discountCents }) => discountCents === 0);
    for (const visit of plain) {
      const goods = visit.charges.reduce((sum: number, { eachCents, quantity }: Row) => sum + eachCents * quantity, 0);
      expect(billOf(visit).totalCents).toBe(goods + Math.floor((goods * 825 + 5000) / 10_000));
    }
    const paid = all.payments.reduce((sum, { cents }) => sum + cents, 0);
    const open = all.visits
      .filter(({ state }) => state !== "closed")
      .reduce((sum, visit) => sum + billOf(visit).totalCents - paidOf(all.payments.filter(({ visitId }) => visitId === visit.id)), 0);
    expect(plain.length).toBeGreaterThan(200);
    expect(open).toBeGreaterThan(0);
    expect(paid + open).toBe(billed);
    expect(all.payments.some(({ visitId, cents }) => cents < billOf(all.visits.find(({ id }) => id === visitId) as Row).totalCents)).toBe(
      true,
    );
  });

  it("pads, paper, polish and cleaner: what came less what was signed for is what is there", () => {
    for (const { id, quantity } of all.stockItems) {
      const came = all.stockMovements
        .filter(({ stockItemId, why }) => stockItemId === id && why === "delivered")
        .reduce((sum, { change }) => sum + change, 0);
      const signed = all.stagesDone
        .flatMap(({ used }) => used)
        .filter(({ stockItemId }: Row) => stockItemId === id)
        .reduce((sum, one: Row) => sum + one.quantity, 0);
      expect(quantity).toBe(came - signed);
    }
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
