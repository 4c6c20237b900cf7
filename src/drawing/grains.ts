/** Work over the mean at which every grain of a place is drawn. */
const FULL = 1.8;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Whether the grain of a place is drawn: where the place's own number in an even sequence lies below its share of the work, so that grains lie denser where there was more. */
export function grainIsThere(place: number, overMean: number): boolean {
  // A step of 34 in the lattice is a neighbour, so the sequence runs over that as well, or grains would line up.
  return overMean / FULL > ((place % 34) * GOLDEN + Math.floor(place / 34) * Math.SQRT2) % 1;
}
