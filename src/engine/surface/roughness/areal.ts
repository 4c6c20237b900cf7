import { refuse } from "../../fault.ts";

/** Plain figures of an areal file about its mean plane height: ISO 25178-2 Sa and Sq without filtering; µm. */
export interface Areal {
  readonly meanUm: number;
  readonly sqUm: number;
  readonly saUm: number;
  readonly points: number;
  readonly missing: number;
}

/** @param um heights, NaN where missing; at least one is there. */
export function arealFigures(um: Float64Array): Areal {
  const there = um.filter((z) => !Number.isNaN(z));
  if (there.length === 0) refuse("profile", "no measured point", "at least 1 measured point");
  const meanUm = there.reduce((sum, z) => sum + z, 0) / there.length;
  const sqUm = Math.sqrt(there.reduce((sum, z) => sum + (z - meanUm) ** 2, 0) / there.length);
  const saUm = there.reduce((sum, z) => sum + Math.abs(z - meanUm), 0) / there.length;
  return { meanUm, sqUm, saUm, points: there.length, missing: um.length - there.length };
}
