import { sql } from "kysely";
import { RecordsFault } from "#contract/records/fault";
import { withFaults } from "../database/driverFault.ts";
import type { ThingRow } from "../database/tables.ts";
import type { Session } from "../session.ts";
import { balls } from "../things/balls.ts";
import { bowlers } from "../things/bowlers.ts";
import { readable } from "../things/setAside.ts";
import { stageKind } from "../things/stagesDone.ts";
import { ticketKind } from "../things/ticketKind.ts";
import type { LastTime, Search } from "./search.ts";
import { digitsOf, serialOf, wordsOf } from "./terms.ts";

const MOST_WORDS = 200;
const USUAL_LIMIT = 20;
const MOST_LIMIT = 100;
/** Sorts behind every letter: a range from `smi` to `smi` with this behind it holds all words that begin so. */
const LAST = "\uffff";

export function search(session: Session): Search {
  return {
    find: (words, limit = USUAL_LIMIT) =>
      withFaults("search", async () => {
        mustBe(words.length >= 1 && words.length <= MOST_WORDS, "words", words.length, `1 to ${MOST_WORDS} letters`);
        mustBe(Number.isInteger(limit) && limit >= 1 && limit <= MOST_LIMIT, "limit", limit, `1 ≤ x ≤ ${MOST_LIMIT}`);
        const [foundBowlers, foundBalls] = [await rowsOf(session, "bowlers", words, limit), await rowsOf(session, "balls", words, limit)];
        return {
          bowlers: readable(session, bowlers, foundBowlers),
          balls: readable(session, balls, foundBalls),
        };
      }),
    lastTime: (ballId) => withFaults("search", () => lastTime(session, ballId)),
  };
}

/** Either all words begin words of the thing, or all of it together begins a serial or number or the end of one. */
async function rowsOf(session: Session, kind: "bowlers" | "balls", words: string, limit: number): Promise<ThingRow[]> {
  const numbers = kind === "bowlers" ? digitsOf(words) : serialOf(words);
  const asNumber = numbers === "" ? [] : await idsOf(session, kind, [numbers], limit);
  const asWords = await idsOf(session, kind, wordsOf(words), limit);
  const ids = [...new Set([...asNumber, ...asWords])].slice(0, limit);
  if (ids.length === 0) return [];
  const rows = (await session.db.selectFrom(kind).selectAll().where("id", "in", ids).execute()) as ThingRow[];
  return ids.flatMap((id) => rows.filter((row) => row.id === id));
}

async function idsOf(session: Session, kind: "bowlers" | "balls", words: readonly string[], limit: number): Promise<string[]> {
  // The longest word narrows most, so it leads; the others are looked up for what it finds.
  const [lead, ...others] = [...words].sort((a, b) => b.length - a.length);
  if (lead === undefined) return [];
  return (await idsQuery(session, kind, lead, others, limit).execute()).map(({ thingId }) => thingId);
}

/** For the test that looks at its plan. */
export function idsQuery({ db }: Session, kind: "bowlers" | "balls", lead: string, others: readonly string[], limit: number) {
  let query = db
    .selectFrom("terms")
    .select("thingId")
    .distinct()
    .where("term", ">=", lead)
    .where("term", "<", lead + LAST)
    .where("kind", "=", kind);
  others.forEach((word, i) => {
    const other = `other${i}` as "other0";
    query = query.where(({ exists, selectFrom }) =>
      exists(
        selectFrom(`terms as ${other}`)
          .select(sql`1`.as("one"))
          .whereRef(`${other}.thingId`, "=", "terms.thingId")
          .where(`${other}.term`, ">=", word)
          .where(`${other}.term`, "<", word + LAST),
      ),
    );
  });
  return query.limit(limit);
}

async function lastTime(session: Session, ballId: string): Promise<LastTime | null> {
  const rows = await lastTimeQuery(session, ballId).execute();
  if (rows.length === 0) return null;
  const { stageId, stageVersion, stageCreatedAt, stageChangedAt, stageSchemaVersion, stageBody, ...ticketRow } = rows[0];
  const stages = rows.flatMap((row) =>
    row.stageId === null
      ? []
      : [
          {
            id: row.stageId,
            shopId: row.shopId,
            version: row.stageVersion ?? 0,
            createdAt: row.stageCreatedAt ?? "",
            changedAt: row.stageChangedAt ?? "",
            schemaVersion: row.stageSchemaVersion ?? 1,
            body: row.stageBody ?? "",
          },
        ],
  );
  const [ticket] = readable(session, ticketKind, [ticketRow]);
  return ticket === undefined ? null : { ticket, stagesDone: readable(session, stageKind, stages) };
}

/** The last finished ticket of a ball with its stages, in one query. */
export function lastTimeQuery({ db }: Session, ballId: string) {
  return db
    .selectFrom("tickets")
    .leftJoin("stagesDone", "stagesDone.ticketId", "tickets.id")
    .select([
      "tickets.id",
      "tickets.shopId",
      "tickets.version",
      "tickets.createdAt",
      "tickets.changedAt",
      "tickets.schemaVersion",
      "tickets.body",
    ])
    .select([
      "stagesDone.id as stageId",
      "stagesDone.version as stageVersion",
      "stagesDone.createdAt as stageCreatedAt",
      "stagesDone.changedAt as stageChangedAt",
      "stagesDone.schemaVersion as stageSchemaVersion",
      "stagesDone.body as stageBody",
    ])
    .where("tickets.id", "=", (inside) =>
      inside
        .selectFrom("tickets")
        .select("id")
        .where("ballId", "=", ballId)
        .where("readyAt", "is not", null)
        .orderBy("id", "desc")
        .limit(1),
    )
    .orderBy("stagesDone.id");
}

function mustBe(holds: boolean, path: string, value: unknown, allowed: string): void {
  if (!holds) throw new RecordsFault("refused", "search", { problems: [{ path, value, allowed }] });
}
