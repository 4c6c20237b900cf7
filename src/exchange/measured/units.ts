import { measuredFault } from "#contract/problem";

/** Factors to metres of the length units that measured files use. A map, since an object also answers to words such as `constructor`. */
const METRES: ReadonlyMap<string, number> = new Map([
  ["m", 1],
  ["mm", 1e-3],
  ["um", 1e-6],
  ["µm", 1e-6],
  ["μm", 1e-6],
  ["nm", 1e-9],
  ["in", 0.0254],
  ["uin", 0.0254e-6],
  ["µin", 0.0254e-6],
]);

export const UNITS: readonly string[] = [...METRES.keys()];

/** Metres in a unit, by its name. @throws {JobFault} `unit` */
export function metresOf(unit: string): number {
  const metres = METRES.get(unit);
  if (metres === undefined) throw measuredFault("unit", unit, "m, mm, um, nm, in, uin");
  return metres;
}
