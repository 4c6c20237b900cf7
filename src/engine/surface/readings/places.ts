import { SIDE_IDS, type SideId } from "../padWork/sides.ts";

/** Where wear lives, and where it does not: beside the six sides the places that tell how a finish fades. */
export const TRACK = "track";
export const OFF_TRACK = "off track";

/** Places of a ball that are known by name; older readings may say others. */
export type Place = SideId | typeof TRACK | typeof OFF_TRACK;
export const PLACES: readonly Place[] = [...SIDE_IDS, TRACK, OFF_TRACK];

const SIDES: readonly string[] = SIDE_IDS;

/** Whether a place is one of the ball's six sides. */
export function isSide(place: string): place is SideId {
  return SIDES.includes(place);
}
