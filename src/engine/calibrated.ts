/**
 * Written by `npm run calibrate`; do not edit. Targets, weights and residuals stand in docs/model/calibration.md.
 */
export const CALIBRATED = {
  "friction.dry.polyester": { value: 0.09, low: 0.08, high: 0.1 },
  "friction.dry.urethane": { value: 0.165, low: 0.1, high: 0.18 },
  "friction.dry.solid": { value: 0.23, low: 0.2, high: 0.25 },
  "friction.dry.hybrid": { value: 0.225, low: 0.2, high: 0.25 },
  "friction.dry.pearl": { value: 0.22, low: 0.19, high: 0.24 },
  "friction.oil": { value: 0.015, low: 0.01, high: 0.02 },
  "friction.filmRatio": { value: 0.75, low: 0.4, high: 1 },
  "filmReach.polyester": { value: 0.6, low: 0.5, high: 0.7 },
  "filmReach.urethane": { value: 1.25, low: 1, high: 1.5 },
  "filmReach.solid": { value: 1.15, low: 1, high: 1.3 },
  "filmReach.hybrid": { value: 1, low: 0.9, high: 1.1 },
  "filmReach.pearl": { value: 0.85, low: 0.7, high: 1 },
  "carriedOil.share": { value: 0.8, low: 0.4, high: 1.2 },
} as const;
