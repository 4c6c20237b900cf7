/** Figures of the material ratio curve (ISO 21920-2; ISO 13565-2), µm and per cent. */
export interface MaterialRatio {
  readonly rkUm: number;
  readonly rpkUm: number;
  readonly rvkUm: number;
  readonly mr1Pct: number;
  readonly mr2Pct: number;
}

/** Share of the curve over which the equivalent line is laid. */
const SECANT = 0.4;

/**
 * The secant over the flattest 40 % of the curve gives Rk between its ends at 0 and 100 %; the peaks and valleys beyond it are turned into right triangles of the same area, whose heights are Rpk and Rvk.
 *
 * @param um heights that are all there, any order; at least two.
 */
export function materialRatio(um: Float64Array): MaterialRatio {
  const heights = um.slice().sort().reverse();
  const count = heights.length;
  const span = Math.max(1, Math.round(SECANT * (count - 1)));
  let flattest = 0;
  for (let i = 1; i + span < count; i++) {
    if (heights[i] - heights[i + span] < heights[flattest] - heights[flattest + span] - 1e-12) flattest = i;
  }
  const { intercept, slope } = secantOver(heights, flattest, flattest + span);
  const [top, bottom] = [intercept, intercept + slope];
  const above = heights.findIndex((z) => z <= top);
  const mr1 = above < 0 ? 1 : above / count;
  const below = heights.findIndex((z) => z < bottom);
  const mr2 = below < 0 ? 1 : below / count;
  let peaks = 0;
  for (let i = 0; i < mr1 * count - 1e-9; i++) peaks += heights[i] - top;
  let valleys = 0;
  for (let i = Math.round(mr2 * count); i < count; i++) valleys += bottom - heights[i];
  return {
    rkUm: top - bottom,
    rpkUm: mr1 > 0 ? (2 * peaks) / (mr1 * count) : 0,
    rvkUm: mr2 < 1 ? (2 * valleys) / ((1 - mr2) * count) : 0,
    mr1Pct: 100 * mr1,
    mr2Pct: 100 * mr2,
  };
}

/** The secant through both ends of a stretch of the curve; the ratio runs from 0 to 1. */
function secantOver(heights: Float64Array, from: number, to: number): { intercept: number; slope: number } {
  const ratio = (i: number) => (i + 0.5) / heights.length;
  const slope = (heights[to] - heights[from]) / (ratio(to) - ratio(from));
  return { intercept: heights[from] - slope * ratio(from), slope };
}
