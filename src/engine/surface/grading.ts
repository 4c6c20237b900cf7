/**
 * Grading systems of abrasives: number → median grain, µm. The same number means different grains in different systems, so a number never stands alone.
 *
 * Sources: ISO 6344 (P grades), ANSI B74.18 (CAMI, sources differ by ± 3 %), JIS R 6001:1987, FEPA standard 42 (F grades). Published unless marked.
 */
export interface Grading {
  readonly name: string;
  readonly source: string;
  readonly mark: "published" | "memory";
  /** Median grain in µm by number, coarse to fine. */
  readonly grainUm: Readonly<Record<number, number>>;
  /** Numbers whose grain is only remembered, although the rest of the table is published. */
  readonly remembered: readonly number[];
}

export const GRADINGS = {
  isoP: {
    name: "P",
    source: "ISO 6344",
    mark: "published",
    grainUm: {
      120: 125,
      150: 100,
      180: 82,
      220: 68,
      240: 58.5,
      280: 52.2,
      320: 46.2,
      360: 40.5,
      400: 35,
      500: 30.2,
      600: 25.8,
      800: 21.8,
      1000: 18.3,
      1200: 15.3,
      1500: 12.6,
      2000: 10.3,
      2500: 8.4,
      3000: 6.5,
      5000: 5,
    },
    remembered: [3000, 5000],
  },
  cami: {
    name: "CAMI",
    source: "ANSI B74.18; sources differ by ± 3 %",
    mark: "published",
    grainUm: { 120: 115, 180: 82, 220: 68, 240: 53, 320: 36, 360: 28, 400: 23, 500: 20, 600: 16, 800: 12.6, 1000: 10.3 },
    remembered: [],
  },
  jis: {
    name: "JIS",
    source: "JIS R 6001:1987",
    mark: "published",
    grainUm: {
      240: 57,
      280: 48,
      320: 40,
      360: 35,
      400: 30,
      500: 25,
      600: 20,
      800: 14,
      1000: 11.5,
      1200: 9.5,
      1500: 8,
      2000: 6.7,
      2500: 5.5,
      3000: 4,
      4000: 3,
      6000: 2,
      8000: 1.2,
    },
    remembered: [],
  },
  fepaF: {
    name: "F",
    source: "FEPA 42",
    mark: "memory",
    grainUm: { 230: 53, 240: 44.5, 280: 36.5, 320: 29.2, 360: 22.8, 400: 17.3, 500: 12.8, 600: 9.3, 800: 6.5, 1000: 4.5, 1200: 3 },
    remembered: [],
  },
} as const satisfies Record<string, Grading>;

export type GradingId = keyof typeof GRADINGS;
export const GRADING_IDS = Object.keys(GRADINGS) as readonly GradingId[];

/** A number within its system, with the grain it stands for. */
export interface Grade {
  readonly system: GradingId;
  readonly number: number;
  readonly grainUm: number;
  readonly mark: "published" | "memory";
}

/** @returns null where the system has no such number. */
export function grade(system: GradingId, number: number): Grade | null {
  const record: Grading = GRADINGS[system];
  const grainUm = record.grainUm[number];
  if (grainUm === undefined) return null;
  return { system, number, grainUm, mark: record.remembered.includes(number) ? "memory" : record.mark };
}

/** The grains that a bare number may stand for, over all systems that have it: 1000 is 18.3, 10.3, 11.5 or 4.5 µm. */
export function grainRangeUm(
  number: number,
): { readonly low: number; readonly high: number; readonly systems: readonly GradingId[] } | null {
  const grades = GRADING_IDS.flatMap((system) => grade(system, number) ?? []);
  if (grades.length === 0) return null;
  const grains = grades.map(({ grainUm }) => grainUm);
  return { low: Math.min(...grains), high: Math.max(...grains), systems: grades.map(({ system }) => system) };
}
