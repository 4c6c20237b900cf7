import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { median, type Row } from "./rows.ts";

/** The last committed table: the median of each ratio, by what it is of. */
export const KEPT = join(import.meta.dirname, "ratios.json");

export type Ratios = Readonly<Record<string, number>>;

export function keptRatios(file = KEPT): Ratios {
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Ratios) : {};
}

export function ratiosOf(rows: readonly Row[]): Ratios {
  return Object.fromEntries(
    rows.flatMap(({ what, ratio }) => (ratio === null ? [] : [[what, Number(median(ratio.rounds).toPrecision(3))]])),
  );
}

/** Below this share of the kept one a ratio is told; below half it is a failure. What a busy machine does lies within the first. */
const WORSE = 0.75;
const HALF = 0.5;

/** What got worse against the table, by how good the best of its rounds is: a round that was disturbed says nothing of the program. */
export function compared(rows: readonly Row[], kept: Ratios): { readonly worse: readonly string[]; readonly halved: readonly string[] } {
  const found = rows.flatMap(({ what, ratio }) => {
    const was = kept[what];
    if (ratio === null || was === undefined) return [];
    const now = ratio.better === "higher" ? Math.max(...ratio.rounds) : Math.min(...ratio.rounds);
    const share = ratio.better === "higher" ? now / was : was / now;
    return [{ share, line: `${what}: ${now.toFixed(2)} × ${ratio.of} at best, ${was} in the table` }];
  });
  return {
    worse: found.filter(({ share }) => share < WORSE && share >= HALF).map(({ line }) => line),
    halved: found.filter(({ share }) => share < HALF).map(({ line }) => line),
  };
}
