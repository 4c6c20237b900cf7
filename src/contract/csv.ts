/*
 * Tables as text after RFC 4180; also with semicolons or tabs, as programs in other languages write them.
 */

/*
 * What a spreadsheet would take for the beginning of a formula, at the beginning of a cell, or behind what another program may take for the end of a
 * cell or a line (OWASP, "CSV Injection"). An apostrophe before it keeps it a text; it stands beside those that are there already, so that reading
 * takes away just the one.
 */
const SIGNS = "=+\\-@＝＋－＠";
const UNSAFE = new RegExp(`((?:^|[;\\t\\r\\n])[ "']*)(?=[${SIGNS}])`, "g");
const MADE_SAFE = new RegExp(`((?:^|[;\\t\\r\\n])[ "']*)'(?=[${SIGNS}])`, "g");

/** One table as text, in which no text begins like a formula: {@link csvRows} reads it back to the letter, a spreadsheet shows an apostrophe. */
export function csvText(columns: readonly string[], rows: readonly (readonly unknown[])[]): string {
  return [columns, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

function cell(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  const text = typeof value === "string" ? value : JSON.stringify(value);
  const harmless = text.replace(UNSAFE, "$1'");
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** The rows of a table, each a list of cells; empty lines are left out. */
export function csvRows(text: string): string[][] {
  const body = text.replace(/^\uFEFF/, "");
  const comma = separatorOf(body);
  const rows: string[][] = [];
  let row: string[] = [];
  let from = 0;
  const field = new RegExp(`("(?:[^"]|"")*"|[^${comma}\\r\\n]*)(${comma}|\\r\\n|\\n|\\r|$)`, "y");
  while (from <= body.length) {
    field.lastIndex = from;
    const match = field.exec(body);
    // A quote that is never closed, or text behind one: the rest is one cell, and its row will not be right.
    const [whole, written, end] = match ?? [body.slice(from), body.slice(from), ""];
    row.push(read(written));
    from += whole.length;
    if (end === comma) continue;
    if (row.some((one) => one.trim() !== "")) rows.push(row);
    row = [];
    if (end === "") break;
  }
  return rows;
}

function read(written: string): string {
  const isQuoted = written.startsWith('"') && written.endsWith('"') && written.length > 1;
  return (isQuoted ? written.slice(1, -1).replaceAll('""', '"') : written).replace(MADE_SAFE, "$1");
}

/** The separator that the heading has most of. */
function separatorOf(text: string): string {
  const heading = text.slice(0, text.search(/[\r\n]|$/));
  const counted = [",", ";", "\t"].map((one) => ({ one, count: heading.split(one).length }));
  return counted.reduce((most, next) => (next.count > most.count ? next : most)).one;
}
