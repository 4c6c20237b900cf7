import type { Vector } from "../../vector.ts";

/**
 * The six sides of a ball, each with the direction that faces up while it is worked. Held with the grip towards you and the thumb below,
 * `grip` looks at you, `opposite` away, `left` and `right` lie beside it, `fingers` above and `thumb` below.
 */
export const SIDE_AXES = {
  grip: [0, 0, 1],
  opposite: [0, 0, -1],
  left: [-1, 0, 0],
  right: [1, 0, 0],
  fingers: [0, 1, 0],
  thumb: [0, -1, 0],
} as const satisfies Record<string, Vector>;

export type SideId = keyof typeof SIDE_AXES;
export const SIDE_IDS = Object.keys(SIDE_AXES) as SideId[];

/** Which sides are meant when somebody says how many: the grip and its opposite, then the two beside, then the last two (common practice). */
export const SIDE_SETS = {
  2: ["grip", "opposite"],
  4: ["grip", "opposite", "left", "right"],
  6: ["grip", "opposite", "left", "right", "fingers", "thumb"],
} as const satisfies Record<number, readonly SideId[]>;

export type SideCount = keyof typeof SIDE_SETS;
export const SIDE_COUNTS: readonly SideCount[] = [2, 4, 6];

/** The side that a direction on the ball lies nearest to, and how far from its middle, degrees. */
export function nearestSide([x, y, z]: Vector): { readonly side: SideId; readonly awayDeg: number } {
  let [side, most]: [SideId, number] = ["grip", -2];
  for (const id of SIDE_IDS) {
    const [ax, ay, az] = SIDE_AXES[id];
    const cosine = ax * x + ay * y + az * z;
    if (cosine > most) [side, most] = [id, cosine];
  }
  return { side, awayDeg: (Math.acos(Math.min(1, most)) * 180) / Math.PI };
}
