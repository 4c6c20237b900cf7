/**
 * Written by `npm run calibrate`; do not edit: the friction law in the middle of the ensemble, and where nine of ten worlds lie. See docs/model/calibration.md.
 */
export const CALIBRATED = {
  "friction.dry.polyester": { value: 0.08832, low: 0.0623, high: 0.125 },
  "friction.dry.urethane": { value: 0.1432, low: 0.0844, high: 0.191 },
  "friction.dry.solid": { value: 0.2129, low: 0.133, high: 0.262 },
  "friction.dry.hybrid": { value: 0.2027, low: 0.131, high: 0.26 },
  "friction.dry.pearl": { value: 0.2019, low: 0.13, high: 0.254 },
  "friction.oil": { value: 0.01242, low: 0.00531, high: 0.0271 },
  "friction.filmRatio": { value: 0.3736, low: 0.332, high: 1.25 },
  "filmReach.polyester": { value: 0.65, low: 0.432, high: 0.87 },
  "filmReach.urethane": { value: 1.224, low: 0.835, high: 1.54 },
  "filmReach.solid": { value: 1.392, low: 1.04, high: 1.46 },
  "filmReach.pearl": { value: 0.947, low: 0.699, high: 1.03 },
  "carriedOil.share": { value: 0.7646, low: 0.285, high: 1.31 },
} as const;
