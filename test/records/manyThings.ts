import { randomBytes } from "node:crypto";
import { uniformSource } from "#engine/random";
import { openSqlite } from "#records/database/sqlite";
import type { ThingRow } from "#records/database/tables";
import { digitsOf, serialOf, withEnds, wordsOf } from "#records/search/terms";
import { balls } from "#records/things/balls";
import { bowlers } from "#records/things/bowlers";
import { visits } from "#records/things/plainKinds";
import { rowOf } from "#records/things/rows";
import { stageKind } from "#records/things/stagesDone";
import { ticketKind } from "#records/things/ticketKind";
import { uuid7Source } from "#records/uuid7";

const SYLLABLES = [
  "ba",
  "dor",
  "el",
  "fin",
  "gu",
  "hal",
  "is",
  "jor",
  "ka",
  "len",
  "mir",
  "no",
  "ost",
  "per",
  "qui",
  "ran",
  "sol",
  "tam",
  "ulf",
  "ven",
];
const START = Date.UTC(2010, 0, 1);
const BALLS_EACH = 3;

export interface Sizes {
  readonly balls: number;
  readonly tickets: number;
}

/** Something of everything that is looked for. */
export interface Sample {
  readonly names: readonly string[];
  readonly serials: readonly string[];
  readonly phones: readonly string[];
  readonly ballIds: readonly string[];
}

/**
 * Fills a shop's database with invented balls and tickets, one stage each, past all checks: only the speed of looking is of interest.
 *
 * @param file a database that has its schema
 */
export function fill(file: string, shopId: string, personId: string, sizes: Sizes, seed: number): Sample {
  const { raw } = openSqlite(file);
  raw.pragma("synchronous = OFF");
  const random = uniformSource(seed);
  let clock = START;
  const newId = uuid7Source(() => clock++, randomBytes);
  const inserts = new Map<string, (row: object) => void>();
  const insert = (table: string, row: ThingRow | object) => {
    const columns = Object.keys(row);
    const known = inserts.get(table) ?? prepared(table, columns);
    inserts.set(table, known);
    known(row);
  };
  const prepared = (table: string, columns: readonly string[]) => {
    const statement = raw.prepare(
      `insert or ignore into "${table}" (${columns.map((column) => `"${column}"`).join(",")}) values (${columns.map((column) => `@${column}`).join(",")})`,
    );
    return (row: object) => void statement.run(row);
  };
  const kept = () => {
    const at = new Date(clock).toISOString();
    return { id: newId(), shopId, version: 1, createdAt: at, changedAt: at };
  };
  const word = () =>
    Array.from({ length: 2 + Math.floor(random() * 2) }, () => SYLLABLES[Math.floor(random() * SYLLABLES.length)]).join("");
  const digits = (count: number) => String(Math.floor(random() * 10 ** count)).padStart(count, "0");
  const terms = (kind: string, thingId: string, found: readonly string[]) => {
    for (const term of new Set(found)) insert("terms", { shopId, kind, thingId, term });
  };
  const sample = { names: [] as string[], serials: [] as string[], phones: [] as string[], ballIds: [] as string[] };
  raw.exec("begin");
  const ballRows: { id: string; bowlerId: string; visitId: string }[] = [];
  for (let i = 0; i < sizes.balls; i += 1) {
    const isNewBowler = i % BALLS_EACH === 0;
    const last = ballRows.at(-1);
    const bowlerId = isNewBowler ? addBowler() : (last?.bowlerId ?? "");
    const visitId = isNewBowler ? addVisit(bowlerId) : (last?.visitId ?? "");
    const serial = `${word().slice(0, 2)}${digits(8)}`.toUpperCase();
    const ball = balls.kept.parse({ ...kept(), name: word(), serial, bowlerId, cover: "solid" });
    insert("balls", rowOf(balls, ball));
    terms("balls", ball.id, [...wordsOf(ball.name), ...withEnds(serialOf(serial))]);
    ballRows.push({ id: ball.id, bowlerId, visitId });
    if (random() < 0.01) {
      sample.serials.push(serial);
      sample.ballIds.push(ball.id);
    }
  }
  for (let i = 0; i < sizes.tickets; i += 1) addTicket(ballRows[Math.floor(random() * ballRows.length)]);
  raw.exec("commit");
  raw.exec("analyze");
  raw.close();
  return sample;

  function addBowler(): string {
    const name = `${word()} ${word()}`;
    const phone = `555 ${digits(7)}`;
    const bowler = bowlers.kept.parse({ ...kept(), name, phone });
    insert("bowlers", rowOf(bowlers, bowler));
    terms("bowlers", bowler.id, [...wordsOf(name), ...withEnds(digitsOf(phone))]);
    if (random() < 0.03) {
      sample.names.push(name);
      sample.phones.push(phone);
    }
    return bowler.id;
  }

  function addVisit(bowlerId: string): string {
    const visit = visits.kept.parse({ ...kept(), bowlerId, arrivedAt: new Date(clock).toISOString(), currency: "USD" });
    insert("visits", rowOf(visits, visit));
    return visit.id;
  }

  function addTicket({ id: ballId, bowlerId, visitId }: { id: string; bowlerId: string; visitId: string }): void {
    const at = new Date(clock).toISOString();
    const common = kept();
    const state = random() < 0.001 ? "in work" : "collected";
    const ticket = ticketKind.kept.parse({
      ...common,
      visitId,
      ballId,
      bowlerId,
      receivedAt: at,
      complaint: "Hooks early and hits weak",
      finishAfter: "2000",
      state,
      been: [{ state: "received", at, by: personId }],
      readyAt: state === "collected" ? at : null,
      collectedAt: state === "collected" ? at : null,
    });
    insert("tickets", rowOf(ticketKind, ticket));
    const stage = stageKind.kept.parse({ ...kept(), ticketId: ticket.id, personId, initials: "T", doneAt: at, what: "2000, wet" });
    insert("stagesDone", rowOf(stageKind, stage));
  }
}
