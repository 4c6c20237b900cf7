/**
 * Written by `npm run calibrate`; do not edit. Targets, weights and residuals stand in docs/model/calibration.md.
 */
export const CALIBRATED = {
  "friction.dry.polyester": { value: 0.09, low: 0.0846, high: 0.0954 },
  "friction.dry.urethane": { value: 0.102, low: 0.0959, high: 0.108 },
  "friction.dry.solid": { value: 0.216, low: 0.203, high: 0.229 },
  "friction.dry.hybrid": { value: 0.211, low: 0.198, high: 0.224 },
  "friction.dry.pearl": { value: 0.206, low: 0.194, high: 0.218 },
  "friction.oil": { value: 0.0172, low: 0.0146, high: 0.0182 },
  "friction.filmRatio": { value: 0.552, low: 0.46, high: 0.585 },
  "filmReach.polyester": { value: 0.6, low: 0.564, high: 0.636 },
  "filmReach.urethane": { value: 1.21, low: 1.14, high: 1.28 },
  "filmReach.solid": { value: 1.29, low: 1.14, high: 1.37 },
  "filmReach.pearl": { value: 0.981, low: 0.8, high: 1.04 },
  "carriedOil.share": { value: 0.663, low: 0.554, high: 0.808 },
} as const;
