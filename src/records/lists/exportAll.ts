import { csvText } from "#contract/csv";
import { THING_KINDS } from "#contract/records/auditEntry";
import type { Session } from "../session.ts";
import { fieldsIn } from "../things/rows.ts";

type Row = Record<string, unknown>;

/** Everything the shop sees, as one moment has it: one JSON with all of it, and a table a kind. */
export function exportAll(session: Session): Promise<{ name: string; text: string }[]> {
  const { shopId, now } = session;
  return session.atOneMoment(async ({ db }) => {
    const tables: [string, Row[]][] = [];
    for (const kind of THING_KINDS) {
      const rows = await db
        .selectFrom(kind as "bowlers")
        .selectAll()
        .orderBy("id")
        .execute();
      tables.push([
        kind,
        rows.map(({ id, version, createdAt, changedAt, body }) => ({ id, version, createdAt, changedAt, ...fieldsOf(body as string) })),
      ]);
    }
    const audit = await db.selectFrom("audit").selectAll().orderBy("id").execute();
    tables.push(["audit", audit.map((row) => ({ ...row, fields: JSON.parse(row.fields) }))]);
    const whole = { gritwright: 1, kind: "export", madeAt: new Date(now()).toISOString(), shopId, ...Object.fromEntries(tables) };
    return [
      { name: "everything.json", text: `${JSON.stringify(whole, null, 1)}\n` },
      ...tables.map(([kind, rows]) => ({ name: `${kind}.csv`, text: tableText(rows) })),
    ];
  });
}

/** What lies there, also where it is not JSON any more: an export leaves nothing out. */
function fieldsOf(body: string): Row {
  return fieldsIn(body) ?? { unreadable: body };
}

function tableText(rows: readonly Row[]): string {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return csvText(
    columns,
    rows.map((row) => columns.map((column) => row[column])),
  );
}
