import type { AuditEntry, ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Db } from "./database/tables.ts";
import { type Runner, transaction } from "./database/transaction.ts";
import { remembered } from "./once.ts";
import type { Write } from "./write.ts";

export interface Written {
  readonly kind: ThingKind;
  readonly id: string;
}

/** What every piece of the records works with: a database, or one transaction in it, and whose shop it is. */
export interface Session {
  readonly db: Db;
  readonly runner: Runner;
  readonly shopId: string;
  readonly now: () => number;
  readonly newId: () => string;
  /** Runs a write in a transaction of its own, or in the one that is open. Inside, only `inside` is used. */
  write<Answer>(write: Write, work: (inside: Session) => Promise<Answer>): Promise<Answer>;
  /** Notes who did what; told to those who watch once it is kept. */
  note(entry: Pick<AuditEntry, "by" | "did" | "kind" | "thingId" | "fields">): Promise<void>;
}

interface RootParts extends Omit<Session, "write" | "note" | "db"> {
  readonly tell: (written: Written) => void;
}

/** Outside any transaction: each write gets one. */
export function rootSession(parts: RootParts): Session {
  const { runner, tell } = parts;
  return {
    ...parts,
    db: runner.db,
    async write(write, work) {
      let noted: Written[] = [];
      const answer = await transaction(runner, (db) => {
        noted = [];
        const inside = insideSession(parts, db, noted);
        return remembered(inside, write, async () => {
          await mustBePerson(inside, write.by);
          return work(inside);
        });
      });
      for (const written of noted) tell(written);
      return answer;
    },
    note() {
      return Promise.reject(new TypeError("a note belongs to a write"));
    },
  };
}

function insideSession(parts: RootParts, db: Db, noted: Written[]): Session {
  const { shopId, now, newId } = parts;
  const inside: Session = {
    ...parts,
    db,
    write(write, work) {
      if (write.once !== undefined) return Promise.reject(new TypeError("a key belongs to the whole, not to a part of it"));
      return work(inside);
    },
    async note({ by, did, kind, thingId, fields }) {
      const at = timeOf(now());
      await db
        .insertInto("audit")
        .values({ id: newId(), shopId, at, by, did, kind, thingId, fields: JSON.stringify(fields) })
        .execute();
      noted.push({ kind, id: thingId });
    },
  };
  return inside;
}

/** ISO 8601 in UTC. */
export function timeOf(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}

async function mustBePerson({ db, shopId }: Session, by: string): Promise<void> {
  const person = await db.selectFrom("people").select("id").where("id", "=", by).where("shopId", "=", shopId).executeTakeFirst();
  if (person !== undefined) return;
  throw new RecordsFault("refused", "by", { problems: [{ path: "by", value: by, allowed: "the id of a person of the shop" }] });
}
