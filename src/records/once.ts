import { RecordsFault } from "#contract/records/fault";
import type { Session } from "./session.ts";
import type { Write } from "./write.ts";

const MOST_KEY = 128;
const KEY_ALLOWED = `1 to ${MOST_KEY} letters`;

/**
 * Runs a write once for its key. The answer is kept in the write's own transaction; a retry reads it.
 *
 * @throws {RecordsFault} `keyReused` where the key stands for something else; `notFound` where the answer was erased with a bowler's data
 */
export async function remembered<Answer>(session: Session, { by, once }: Write, work: () => Promise<Answer>): Promise<Answer> {
  if (once === undefined) return work();
  const { db, shopId, now } = session;
  const { key, route, bodyHash } = once;
  if (key.length < 1 || key.length > MOST_KEY)
    throw new RecordsFault("refused", "once", { problems: [{ path: "once.key", value: key, allowed: KEY_ALLOWED }] });
  const known = await db.selectFrom("once").selectAll().where("person", "=", by).where("key", "=", key).executeTakeFirst();
  if (known === undefined) {
    const answer = await work();
    const at = new Date(now()).toISOString();
    await db
      .insertInto("once")
      .values({ shopId, person: by, key, route, bodyHash, at, answer: JSON.stringify(answer ?? null) })
      .execute();
    return answer;
  }
  if (known.route !== route || known.bodyHash !== bodyHash) throw new RecordsFault("keyReused", key);
  if (known.answer === null) throw new RecordsFault("notFound", `the answer kept for ${key}`);
  return JSON.parse(known.answer);
}
