import { fixedIn } from "../numbers.ts";

export const LANGUAGE = "de-DE";

export const fixed = fixedIn(LANGUAGE);

export function signed(value: number, decimals: number): string {
  const text = fixed(value, decimals);
  return Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

export const feet = (ft: number): string => `${fixed(ft, 1)} ft`;
export const boards = (count: number): string => `${fixed(count, 1)} ${fixed(Math.abs(count), 1) === "1,0" ? "Board" : "Boards"}`;
export const degrees = (deg: number): string => `${fixed(deg, 1)}°`;
export const launchAngle = (deg: number, decimals = 2): string =>
  `${fixed(Math.abs(deg), decimals)}° ${deg < 0 ? "nach innen" : "nach außen"}`;
export const mph = (value: number): string => `${fixed(value, 1)} mph`;
export const metresPerSecond = (value: number): string => `${fixed(value, 2)} m/s`;
export const micrometres = (um: number): string => `${fixed(um, 2)} µm`;
export const millilitres = (mL: number): string => `${fixed(mL, 1)} mL`;

export function chance(value: number, low?: number, high?: number): string {
  const percent = (share: number) => fixed(100 * share, 0);
  return low === undefined || high === undefined ? `${percent(value)} %` : `${percent(value)} % (${percent(low)}–${percent(high)})`;
}

export function taxPercent(millipercent: number): string {
  const decimals = [0, 1, 2].find((count) => millipercent % 10 ** (3 - count) === 0) ?? 3;
  return `${fixed(millipercent / 1000, decimals)} %`;
}

export const inHundred = (points: number): string => `${fixed(points, 1)} von 100`;
