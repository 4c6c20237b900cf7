import type { Vector } from "../../vector.ts";
import type { Cells } from "./cells.ts";
import { type Received, receive } from "./received.ts";
import { profileAt, type SideProfile } from "./sideProfile.ts";

/** Lays a side's profile about its axis over the ball; scratches run along the rings. */
export function addSpinnerSide(into: Received, cells: Cells, [ax, ay, az]: Vector, profile: SideProfile, umPerWork: number): void {
  for (let i = 0; i < cells.count; i++) {
    const [x, y, z] = cells.at[i];
    const cosine = ax * x + ay * y + az * z;
    const work = profileAt(profile, Math.acos(Math.max(-1, Math.min(1, cosine))));
    if (work > 0) receive(into, cells, i, work, umPerWork, ay * z - az * y, az * x - ax * z, ax * y - ay * x);
  }
}
