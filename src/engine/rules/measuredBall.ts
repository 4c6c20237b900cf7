/** What a book may limit, measured or reckoned from what is. */
export const QUANTITIES = [
  "massLb",
  "diameterIn",
  "circumferenceIn",
  "roundnessIn",
  "rgIn",
  "differentialIn",
  "intermediateOverTotalIn",
  "friction",
  "hardnessD",
  "meanRaMicroinch",
  "highestRaMicroinch",
  "oilAbsorptionMinutes",
  "topBottomOz",
  "sideOz",
  "fingerThumbOz",
  "balanceHoles",
  "gripHoles",
  "unusedGripHoles",
  "unevenSurface",
] as const;
export type Quantity = (typeof QUANTITIES)[number];

/** What was measured on a ball, and what is known of it; null where it was not. */
export interface MeasuredBall {
  readonly massLb: number | null;
  /** Diameters in several directions, in. */
  readonly diametersIn: readonly number[];
  readonly circumferenceIn: number | null;
  readonly rgIn: number | null;
  readonly differentialIn: number | null;
  readonly intermediateIn: number | null;
  /** Of ball on lane. */
  readonly friction: number | null;
  readonly hardnessD: number | null;
  /** Of the ball when its hardness was read, °C. */
  readonly temperatureC: number | null;
  readonly oilAbsorptionMinutes: number | null;
  readonly highPerformanceCore: boolean | null;
  /** Ra, µin. */
  readonly raMicroinch: readonly number[];
  /** Static balance, oz; the sign says towards which of the two. */
  readonly topBottomOz: number | null;
  readonly sideOz: number | null;
  readonly fingerThumbOz: number | null;
  readonly balanceHoles: number | null;
  readonly gripHoles: number | null;
  readonly unusedGripHoles: number | null;
  /** Whether the whole surface was prepared alike. */
  readonly wholeSurface: boolean | null;
  readonly approvedOn: string | null;
  readonly madeOn: string | null;
}

export const NOTHING_MEASURED: MeasuredBall = {
  massLb: null,
  diametersIn: [],
  circumferenceIn: null,
  rgIn: null,
  differentialIn: null,
  intermediateIn: null,
  friction: null,
  hardnessD: null,
  temperatureC: null,
  oilAbsorptionMinutes: null,
  highPerformanceCore: null,
  raMicroinch: [],
  topBottomOz: null,
  sideOz: null,
  fingerThumbOz: null,
  balanceHoles: null,
  gripHoles: null,
  unusedGripHoles: null,
  wholeSurface: null,
  approvedOn: null,
  madeOn: null,
};

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The measured value of a quantity, or null. Roundness wants two diameters. */
export function measuredValue(quantity: Quantity, ball: MeasuredBall): number | null {
  switch (quantity) {
    case "diameterIn":
      return ball.diametersIn.length === 0 ? null : mean(ball.diametersIn);
    case "roundnessIn":
      return ball.diametersIn.length < 2 ? null : Math.max(...ball.diametersIn) - Math.min(...ball.diametersIn);
    case "meanRaMicroinch":
      return ball.raMicroinch.length === 0 ? null : mean(ball.raMicroinch);
    case "highestRaMicroinch":
      return ball.raMicroinch.length === 0 ? null : Math.max(...ball.raMicroinch);
    case "intermediateOverTotalIn":
      return ball.intermediateIn === null || ball.differentialIn === null ? null : ball.intermediateIn - ball.differentialIn;
    case "unevenSurface":
      return ball.wholeSurface === null ? null : Number(!ball.wholeSurface);
    default:
      return ball[quantity];
  }
}
