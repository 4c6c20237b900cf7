import { fromBase64, toBase64 } from "../bytes.ts";
import { type CarryTable, CELLS, type Quality, type QualityName } from "./carryGrid.ts";

/**
 * The table as text that source code can hold: planes one after another as small whole numbers, in base 64 (RFC 4648 §4).
 * Strike chance and pins down in 16 bits, log odds in thousandths, leaves as square roots in 8 bits (fine where they are rare).
 */
export interface PackedTable {
  readonly leaves: readonly number[];
  readonly qualities: Readonly<Record<QualityName, Quality>>;
  readonly base64: string;
}

const LOG_ODDS_UNIT = 0.001;
const SIXTEEN = 65535;
const EIGHT = 255;

export function packTable(table: CarryTable): PackedTable {
  const bytes: number[] = [];
  const word = (value: number) => bytes.push((value >> 8) & 255, value & 255);
  for (const p of table.strike) word(Math.round(p * SIXTEEN));
  for (const plane of [table.level, table.shape, table.sampling])
    for (const value of plane) word(Math.max(-32768, Math.min(32767, Math.round(value / LOG_ODDS_UNIT))));
  for (const down of table.pinsDown) word(Math.round((down / 10) * SIXTEEN));
  for (const p of table.leaveChance) bytes.push(Math.round(Math.sqrt(p) * EIGHT));
  return { leaves: table.leaves, qualities: table.qualities, base64: toBase64(bytes) };
}

/** @throws RangeError when the text does not hold a whole table. */
export function unpackTable({ leaves, qualities, base64 }: PackedTable): CarryTable {
  const bytes = fromBase64(base64);
  const expected = CELLS * (5 * 2 + leaves.length);
  if (bytes.length !== expected) throw new RangeError(`The carry table has ${bytes.length} bytes, not ${expected}.`);
  let at = 0;
  const words = (scale: (word: number) => number) =>
    Float64Array.from({ length: CELLS }, () => {
      const word = (bytes[at] << 8) | bytes[at + 1];
      at += 2;
      return scale(word);
    });
  const signed = (word: number) => (word > 32767 ? word - 65536 : word) * LOG_ODDS_UNIT;
  return {
    strike: words((word) => word / SIXTEEN),
    level: words(signed),
    shape: words(signed),
    sampling: words(signed),
    pinsDown: words((word) => (10 * word) / SIXTEEN),
    leaves,
    qualities,
    leaveChance: Float64Array.from({ length: CELLS * leaves.length }, () => (bytes[at++] / EIGHT) ** 2),
  };
}
