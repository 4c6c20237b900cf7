import { measuredFault } from "#contract/problem";
import type { Profile } from "#engine/surface/roughness/profile";
import { METRES, UNIT_NAMES } from "./units.ts";

const END_OF_RECORD = "\u0003\r\n";
const END_OF_FILE = "\u001a";
const MOST_POINTS = 20_000_000;

/**
 * SMD (ISO 5436-2, the older text form): four records, each ended by the byte 03 and a line end. Record 1 names the axes (`CX I count unit scale type increment`, `CZ A count unit scale type`),
 * record 2 is free, record 3 holds a height a line, record 4 the checksum: the sum of the bytes before it, modulo 65536; the byte 1A ends the file. The axis line's order of words is from memory.
 */
export function readSmd(bytes: Uint8Array): Profile {
  const text = new TextDecoder("latin1").decode(bytes);
  const records = text.split(END_OF_RECORD);
  if (records.length < 4 || !text.trimEnd().endsWith(END_OF_FILE))
    throw measuredFault("records", records.length - 1, "4 records and the end mark 1A");
  checkSum(bytes, records);
  const [x, z] = ["CX", "CZ"].map((name) => axisLine(records[0], name));
  const lines = records[2].split(/\r?\n/).filter((line) => line.trim() !== "");
  if (lines.length !== z.count || lines.length > MOST_POINTS) throw measuredFault("size", lines.length, `${z.count} heights`);
  const toUm = (METRES[z.unit] * z.scale) / METRES.um;
  const um = Float64Array.from(lines, (line) => {
    if (/bad/i.test(line)) return Number.NaN;
    const value = Number(line);
    if (!Number.isFinite(value)) throw measuredFault("notANumber", line.trim(), "a height a line");
    return value * toUm;
  });
  if (um.length < 2 || !(x.increment > 0)) throw measuredFault("axis", `CX ${x.increment}`, "an increment above 0 and at least 2 points");
  return { um, spacingMm: (x.increment * METRES[x.unit] * x.scale) / METRES.mm };
}

function axisLine(record: string, name: string): { count: number; unit: string; scale: number; increment: number } {
  const words = record
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/))
    .find(([first]) => first === name);
  if (words === undefined || words.length < 6) throw measuredFault("axis", name, `${name} type count unit scale datatype increment`);
  const [, , count, unit, scale, , increment] = words;
  if (!(unit.toLowerCase() in METRES)) throw measuredFault("unit", unit, UNIT_NAMES);
  const numbers = [Number(count), Number(scale), Number(increment ?? "1")];
  if (!numbers.every(Number.isFinite)) throw measuredFault("axis", words.join(" "), `${name} type count unit scale datatype increment`);
  return { count: numbers[0], unit: unit.toLowerCase(), scale: numbers[1], increment: numbers[2] };
}

function checkSum(bytes: Uint8Array, records: readonly string[]): void {
  const length = records.slice(0, 3).reduce((sum, record) => sum + record.length + END_OF_RECORD.length, 0);
  let sum = 0;
  for (let i = 0; i < length; i++) sum = (sum + bytes[i]) % 65536;
  const stated = Number(/\d+/.exec(records[3])?.[0] ?? Number.NaN);
  if (stated !== sum) throw measuredFault("checksum", Number.isNaN(stated) ? "none" : stated, String(sum));
}
