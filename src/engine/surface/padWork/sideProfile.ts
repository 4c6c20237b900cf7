import { DEGREE, INCH, RPM } from "../../units.ts";
import { FORCES } from "../cut.ts";
import type { SideWork, SpinnerStage } from "./padStage.ts";

/** Steps of the table from the middle of the side to the far pole. */
const STEPS = 1440;
/** Places of the pad over which a sweep is summed: so many to the pad's own radius. */
const PLACES_A_RADIUS = 40;

/** Work per area against the angle from the middle of the side, J/m²; it is the same all round, since the ball turns under the pad many times. */
export interface SideProfile {
  /** `table[i]` belongs to the angle i·π/(length − 1). */
  readonly table: Float64Array;
}

/**
 * Share of a turn that a ring at polar angle `ring` spends under a pad of angular radius `pad` held at `place`: the spherical law of cosines.
 * All angles in radians, 0 to π.
 */
export function shareUnderPad(ring: number, place: number, pad: number): number {
  if (Math.abs(ring - place) >= pad) return 0;
  if (ring + place <= pad) return 1;
  const cosine = (Math.cos(pad) - Math.cos(ring) * Math.cos(place)) / (Math.sin(ring) * Math.sin(place));
  return Math.acos(Math.max(-1, Math.min(1, cosine))) / Math.PI;
}

/** Angular radius of a pad on a ball, radians: a soft pad lies on the ball, so its radius is an arc. */
export function padAngle(padDiameterIn: number, diameterIn: number): number {
  return padDiameterIn / diameterIn;
}

/**
 * What one side gets on the spinner: force spread evenly over the pad's cap, times the way of the surface under it. The sweep goes there and
 * back at a constant rate, which gives each angle the same time.
 */
export function sideProfile(stage: SpinnerStage, work: SideWork, diameterIn: number): SideProfile {
  const radius = (diameterIn / 2) * INCH;
  const pad = padAngle(stage.padDiameterIn, diameterIn);
  const pressure = FORCES[work.force] / (2 * Math.PI * radius * radius * (1 - Math.cos(pad)));
  const places = sweepPlaces(stage.sweepDeg, pad);
  const table = Float64Array.from({ length: STEPS + 1 }, (_, i) => {
    const ring = (i / STEPS) * Math.PI;
    const speed = stage.spinnerRpm * RPM * radius * Math.sin(ring);
    const swept = places.reduce((sum, place) => sum + shareUnderPad(ring, place, pad), 0) / places.length;
    const held = work.held === null ? 0 : work.held.seconds * shareUnderPad(ring, work.held.atDeg * DEGREE, pad);
    return pressure * speed * (work.seconds * swept + held);
  });
  return { table };
}

function sweepPlaces([fromDeg, toDeg]: SpinnerStage["sweepDeg"], pad: number): number[] {
  const [from, range] = [fromDeg * DEGREE, (toDeg - fromDeg) * DEGREE];
  const count = Math.max(1, Math.ceil((PLACES_A_RADIUS * range) / pad));
  return Array.from({ length: count }, (_, i) => from + (range * (i + 0.5)) / count);
}

/** The profile at an angle, radians 0 to π, straight between the table's places. */
export function profileAt({ table }: SideProfile, angle: number): number {
  const place = (angle / Math.PI) * (table.length - 1);
  const below = Math.min(Math.floor(place), table.length - 2);
  return table[below] + (place - below) * (table[below + 1] - table[below]);
}
