/**
 * What the simulation needs to know of materials and nobody has published: each with the range that is physically possible for
 * a plastic-coated maple pin, a resin ball and a synthetic deck. The ranges are ours; the fit narrows them (docs/model/carry.md).
 */
export const COEFFICIENTS = {
  pinPinFriction: { low: 0.05, high: 0.35, meaning: "friction of pin on pin" },
  ballPinFriction: { low: 0.05, high: 0.35, meaning: "friction of ball on pin" },
  pinDeckFriction: { low: 0.15, high: 0.5, meaning: "friction of pin on deck" },
  wallFriction: { low: 0.1, high: 0.5, meaning: "friction of pin on side wall" },
  pinPinRestitution: { low: 0.5, high: 0.85, meaning: "restitution of pin on pin" },
  ballPinRestitution: { low: 0.55, high: 0.85, meaning: "restitution of ball on pin" },
  pinDeckRestitution: { low: 0.05, high: 0.5, meaning: "restitution of pin on deck" },
  wallRestitution: { low: 0.2, high: 0.75, meaning: "restitution of pin on side wall" },
  spotScatterIn: { low: 0.02, high: 0.2, meaning: "how far a pin stands from its spot, standard deviation each way, in" },
} as const;

export type CoefficientName = keyof typeof COEFFICIENTS;
export type Coefficients = Readonly<Record<CoefficientName, number>>;
export const COEFFICIENT_NAMES = Object.keys(COEFFICIENTS) as readonly CoefficientName[];

/** Coefficients from numbers in 0–1, one a name. */
export function coefficientsAt(unit: ArrayLike<number>): Coefficients {
  const entries = COEFFICIENT_NAMES.map((name, i) => {
    const { low, high } = COEFFICIENTS[name];
    return [name, low + (high - low) * unit[i]];
  });
  return Object.fromEntries(entries) as Coefficients;
}

/** The middle of every range: what the first table and the tests of the bodies use. */
export const MIDDLE_COEFFICIENTS: Coefficients = coefficientsAt(COEFFICIENT_NAMES.map(() => 0.5));
