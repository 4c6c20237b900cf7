/*
 * Tables as text after RFC 4180; also with semicolons or tabs, as programs in other languages write them.
 */

/** What a spreadsheet would take for the beginning of a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/** One table as text. Texts that begin like a formula get an apostrophe before them, so that a spreadsheet only shows them. */
export function csvText(columns: readonly string[], rows: readonly (readonly unknown[])[]): string {
  return [columns, ...rows].map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

function cell(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  const text = typeof value === "string" ? value : JSON.stringify(value);
  const harmless = FORMULA.test(text) ? `'${text}` : text;
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
    row.push(written.startsWith('"') && written.endsWith('"') && written.length > 1 ? written.slice(1, -1).replaceAll('""', '"') : written);
    from += whole.length;
    if (end === comma) continue;
    if (row.some((one) => one.trim() !== "")) rows.push(row);
    row = [];
    if (end === "") break;
  }
  return rows;
}

/** The separator that the heading has most of. */
function separatorOf(text: string): string {
  const heading = text.slice(0, text.search(/[\r\n]|$/));
  const counted = [",", ";", "\t"].map((one) => ({ one, count: heading.split(one).length }));
  return counted.reduce((most, next) => (next.count > most.count ? next : most)).one;
}
