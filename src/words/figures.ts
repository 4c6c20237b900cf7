import { fixedIn } from "./numbers.ts";

/* How figures are written, in one place: fixed decimals so that columns line up, a true minus sign, the unit behind. */

/** Numbers, money, days and times are written for it. */
export const LANGUAGE = "en-GB";

/** A number with a fixed count of decimals and a true minus; never "−0.0". */
export const fixed = fixedIn(LANGUAGE);

/** A change, always with its sign: `+1.5`, `−0.3`, `0.0`. */
export function signed(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

export const feet = (ft: number): string => `${fixed(ft, 1)} ft`;
export const boards = (count: number): string => `${fixed(count, 1)} ${fixed(Math.abs(count), 1) === "1.0" ? "board" : "boards"}`;
export const degrees = (deg: number): string => `${fixed(deg, 1)}°`;
/** A launch angle with its side in words: `1.50° outward`, `0.40° inward`. */
export const launchAngle = (deg: number, decimals = 2): string => `${fixed(Math.abs(deg), decimals)}° ${deg < 0 ? "inward" : "outward"}`;
export const mph = (value: number): string => `${fixed(value, 1)} mph`;
export const metresPerSecond = (value: number): string => `${fixed(value, 2)} m/s`;
export const micrometres = (um: number): string => `${fixed(um, 2)} µm`;
export const millilitres = (mL: number): string => `${fixed(mL, 1)} mL`;

/** A chance 0–1 as whole per cent, with the interval behind it where one is given: `54 % (46–61)`. */
export function chance(value: number, low?: number, high?: number): string {
  const percent = (share: number) => fixed(100 * share, 0);
  return low === undefined || high === undefined ? `${percent(value)} %` : `${percent(value)} % (${percent(low)}–${percent(high)})`;
}

/** A tax of thousandths of a percent, with as many decimals as it has: `8.25 %`. */
export function taxPercent(millipercent: number): string {
  const decimals = [0, 1, 2].find((count) => millipercent % 10 ** (3 - count) === 0) ?? 3;
  return `${fixed(millipercent / 1000, decimals)} %`;
}

/** Differences of chance, given in points: `2.3 in 100`. */
export const inHundred = (points: number): string => `${fixed(points, 1)} in 100`;
