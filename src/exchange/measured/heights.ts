import { measuredFault } from "#contract/problem";

/** A metre up or down is no roughness; beyond it squares and sums could run out of the numbers' range. */
const MOST_UM = 1e6;

/**
 * Heights as a file gives them, checked after its scale and unit are in them.
 *
 * @param um µm; NaN is a point that was not measured
 * @throws {JobFault} `height` for one beyond a metre or without end; `noPoints` where none was measured
 */
export function checkedHeights(um: Float64Array): Float64Array {
  let isMeasured = false;
  for (const height of um) {
    if (Number.isNaN(height)) continue;
    if (Math.abs(height) > MOST_UM) throw measuredFault("height", `${height} µm`, `−${MOST_UM} to ${MOST_UM} µm`);
    isMeasured = true;
  }
  if (!isMeasured) throw measuredFault("noPoints", um.length, "at least one measured point");
  return um;
}
