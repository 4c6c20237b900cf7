import { INCH } from "#engine/units";

/**
 * Half diameters of a pin by height above the deck, in: the governing body's drawing (from memory), height 15 in, rounded top of radius 1.273 in.
 * As a solid of revolution it has 128 in³ and its centre of gravity at 5.8 in (published: 5 5/8 to 5 15/16 in).
 */
const PROFILE_IN: readonly (readonly [height: number, diameter: number])[] = [
  [0, 2.031],
  [0.75, 2.828],
  [2.25, 3.906],
  [3.375, 4.51],
  [4.5, 4.766],
  [5.875, 4.563],
  [7.25, 3.703],
  [8.625, 2.472],
  [9.375, 1.965],
  [10, 1.797],
  [10.875, 1.87],
  [11.75, 2.094],
  [12.625, 2.406],
  [13.5, 2.547],
];
export const PIN_HEIGHT_IN = 15;
const TOP_RADIUS_IN = 1.273;
/** The rounded edge of the foot, and the circle on which the pin stands. */
const FOOT_EDGE_IN = 5 / 32;
const FOOT_CIRCLE_IN = 2.031 / 2;
const FOOT_BALLS = 12;
/** Spheres inside the body; with 21 of them the surface lies at most 0.065 in inside the true one, and more change nothing. */
const BODY_SPHERES = 21;

/** A sphere of the pin's collision shape, in metres; the pin's axis is y, its foot at 0. */
export interface Sphere {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly radius: number;
}

/** Radius of the pin at a height, in, from a monotone cubic through the drawing's figures and the rounded top. */
export function pinRadiusIn(heightIn: number): number {
  const topCentre = PIN_HEIGHT_IN - TOP_RADIUS_IN;
  if (heightIn >= 13.5) {
    const up = heightIn - topCentre;
    return Math.sqrt(Math.max(0, TOP_RADIUS_IN * TOP_RADIUS_IN - up * up));
  }
  let at = 0;
  while (at < PROFILE_IN.length - 2 && PROFILE_IN[at + 1][0] <= heightIn) at++;
  const [h0, d0] = PROFILE_IN[at];
  const [h1, d1] = PROFILE_IN[at + 1];
  const t = (heightIn - h0) / (h1 - h0);
  const [m0, m1] = [slopeAt(at) * (h1 - h0), slopeAt(at + 1) * (h1 - h0)];
  const t2 = t * t;
  const t3 = t2 * t;
  return ((2 * t3 - 3 * t2 + 1) * d0 + (t3 - 2 * t2 + t) * m0 + (3 * t2 - 2 * t3) * d1 + (t3 - t2) * m1) / 2;
}

/** Slope of the diameter at a row of the drawing: harmonic mean of the neighbours (Fritsch & Butland 1984), which makes no bumps. */
function slopeAt(row: number): number {
  const secant = (i: number) => (PROFILE_IN[i + 1][1] - PROFILE_IN[i][1]) / (PROFILE_IN[i + 1][0] - PROFILE_IN[i][0]);
  if (row === 0) return secant(0);
  if (row === PROFILE_IN.length - 1) return secant(row - 1);
  const [before, after] = [secant(row - 1), secant(row)];
  return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
}

/** What a pin weighs and how it turns, as a uniform solid of revolution. */
export interface PinSolid {
  readonly volumeIn3: number;
  readonly centreIn: number;
  /** Moments of inertia about the centre of gravity for a mass of 1 kg, m². */
  readonly axial: number;
  readonly transverse: number;
}

export function pinSolid(): PinSolid {
  const slices = 3000;
  const step = PIN_HEIGHT_IN / slices;
  let [area, first, second, fourth] = [0, 0, 0, 0];
  for (let i = 0; i < slices; i++) {
    const height = (i + 0.5) * step;
    const r2 = pinRadiusIn(height) ** 2;
    area += r2 * step;
    first += r2 * height * step;
    second += r2 * height * height * step;
    fourth += r2 * r2 * step;
  }
  const centreIn = first / area;
  const axial = fourth / (2 * area);
  return {
    volumeIn3: Math.PI * area,
    centreIn,
    axial: axial * INCH * INCH,
    transverse: (axial / 2 + second / area - centreIn * centreIn) * INCH * INCH,
  };
}

/** The pin's collision shape: a ring of small balls as its foot and a stack of spheres that just fit inside. Hulls with facets rock wrongly. */
export function pinSpheres(): readonly Sphere[] {
  const foot = Array.from({ length: FOOT_BALLS }, (_, i) => {
    const angle = (2 * Math.PI * i) / FOOT_BALLS;
    return {
      x: FOOT_CIRCLE_IN * Math.cos(angle) * INCH,
      y: FOOT_EDGE_IN * INCH,
      z: FOOT_CIRCLE_IN * Math.sin(angle) * INCH,
      radius: FOOT_EDGE_IN * INCH,
    };
  });
  const lowest = 1;
  const highest = PIN_HEIGHT_IN - TOP_RADIUS_IN;
  const body = Array.from({ length: BODY_SPHERES }, (_, i) => {
    const height = lowest + ((highest - lowest) * i) / (BODY_SPHERES - 1);
    return { x: 0, y: height * INCH, z: 0, radius: inscribedRadiusIn(height) * INCH };
  });
  return [...foot, ...body];
}

/** Radius of the largest sphere about a point of the axis that stays inside the pin and clear of the deck, in. */
function inscribedRadiusIn(heightIn: number): number {
  const clearOfDeck = 0.02;
  let radius = Math.min(heightIn - clearOfDeck, PIN_HEIGHT_IN - heightIn);
  for (let i = 1; i < 1500; i++) {
    const height = i * 0.01;
    radius = Math.min(radius, Math.hypot(height - heightIn, pinRadiusIn(height)));
  }
  return radius;
}
