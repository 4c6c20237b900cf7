/**
 * Written by `npm run calibrate`; do not edit: the friction law in the middle of the ensemble, and where nine of ten worlds lie. See docs/model/calibration.md.
 */
export const CALIBRATED = {
  "friction.dry.polyester": { value: 0.08832, low: 0.0636, high: 0.124 },
  "friction.dry.urethane": { value: 0.1731, low: 0.0845, high: 0.195 },
  "friction.dry.solid": { value: 0.221, low: 0.133, high: 0.26 },
  "friction.dry.hybrid": { value: 0.2194, low: 0.13, high: 0.259 },
  "friction.dry.pearl": { value: 0.2238, low: 0.131, high: 0.254 },
  "friction.oil": { value: 0.0117, low: 0.00531, high: 0.0275 },
  "friction.filmRatio": { value: 0.4288, low: 0.331, high: 1.26 },
  "filmReach.polyester": { value: 0.65, low: 0.432, high: 0.87 },
  "filmReach.urethane": { value: 0.848, low: 0.84, high: 1.55 },
  "filmReach.solid": { value: 1.393, low: 1.03, high: 1.45 },
  "filmReach.pearl": { value: 1.005, low: 0.682, high: 1.03 },
  "carriedOil.share": { value: 0.7753, low: 0.285, high: 1.31 },
} as const;
