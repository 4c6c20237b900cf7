import { setImmediate as nextTurn } from "node:timers/promises";
import { csvText } from "#contract/csv";
import { THING_KINDS, type ThingKind } from "#contract/records/auditEntry";
import type { Db } from "../database/tables.ts";
import type { Session } from "../session.ts";
import { fieldsOf } from "../things/audit.ts";
import { fieldsIn } from "../things/rows.ts";
import { eachOf, portionsOf } from "./portions.ts";

type Row = Record<string, unknown>;

/** Rows that are read at once: what they take is over before anybody waits. */
const PAGE = 500;

/** Everything the shop sees, as one moment has it: one JSON with all of it, and a table a kind. Made in portions, between which others are served. */
export function exportAll(session: Session): Promise<{ name: string; text: string }[]> {
  const { shopId, now } = session;
  return session.atOneMoment(async ({ db }) => {
    const whole: string[] = [];
    const tables: { name: string; text: string }[] = [];
    for (const kind of [...THING_KINDS, "audit" as const]) {
      const rows: Row[] = [];
      for await (const page of pagesOf(db, kind)) rows.push(...page);
      whole.push(`,\n ${JSON.stringify(kind)}: [${(await eachOf(rows, (row) => `\n  ${JSON.stringify(row)}`)).join()}]`);
      tables.push({ name: `${kind}.csv`, text: await tableText(rows) });
    }
    const head = JSON.stringify({ gritwright: 1, kind: "export", madeAt: new Date(now()).toISOString(), shopId }, null, 1);
    return [{ name: "everything.json", text: `${head.slice(0, -2)}${whole.join("")}\n}\n` }, ...tables];
  });
}

async function* pagesOf(db: Db, kind: ThingKind | "audit"): AsyncGenerator<Row[]> {
  for (let after: string | null = ""; after !== null; ) {
    const rows: Row[] = await db
      .selectFrom(kind as "bowlers")
      .selectAll()
      .where("id", ">", after)
      .orderBy("id")
      .limit(PAGE)
      .execute();
    yield rows.map((row) => (kind === "audit" ? { ...row, fields: fieldsOf(row.fields as string) ?? row.fields } : thingIn(row)));
    await nextTurn();
    after = rows.length < PAGE ? null : (rows[rows.length - 1].id as string);
  }
}

/** What lies there, also where it is not JSON any more: an export leaves nothing out. */
function thingIn({ id, version, createdAt, changedAt, body }: Row): Row {
  return { id, version, createdAt, changedAt, ...(fieldsIn(body as string) ?? { unreadable: body }) };
}

async function tableText(rows: readonly Row[]): Promise<string> {
  const columns = new Set<string>();
  for await (const portion of portionsOf(rows)) for (const row of portion) for (const column of Object.keys(row)) columns.add(column);
  const names = [...columns];
  const heading = csvText(names, []);
  const lines: string[] = [heading];
  for await (const portion of portionsOf(rows)) {
    const cells = portion.map((row) => names.map((column) => row[column]));
    lines.push(csvText(names, cells).slice(heading.length));
  }
  return lines.join("");
}
