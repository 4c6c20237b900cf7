/**
 * Units. The engine computes in SI; a name without a suffix is SI, a name with one (`speedMph`) is not.
 * One direction only: multiply by the constant to go into SI, divide by it to come out.
 *
 * Sources: inch, foot, mile and pound are exact by the international agreement of 1959; standard gravity is
 * the defined value of the 3rd CGPM (1901); board and unit of oil see `lane/geometry` and `assumptions`.
 */
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const MPH = 0.44704;
export const POUND = 0.45359237;
export const DEGREE = Math.PI / 180;
export const RPM = (2 * Math.PI) / 60;
export const MICROMETRE = 1e-6;
export const MICROINCH = INCH * 1e-6;
export const MILLILITRE = 1e-6;
export const MICROLITRE = 1e-9;

/** Standard gravity, m/s². */
export const STANDARD_GRAVITY = 9.80665;
