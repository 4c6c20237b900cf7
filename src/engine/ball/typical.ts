import type { Ball } from "./ball.ts";

/** A common ball, for what the job file leaves out. Common practice: 15 lb, middle RG, strong pin position, the commonest finish out of the box. */
export const TYPICAL_BALL = {
  name: "Unnamed ball",
  job: "strike",
  massLb: 15,
  diameterIn: 8.594,
  rgIn: 2.5,
  differentialIn: 0.045,
  intermediateDifferentialIn: 0,
  principalRgIn: null,
  pinToPapIn: 4.5,
  drillingAngleDeg: 45,
  finish: { number: 2000, polished: false },
  raMicroinch: null,
} as const satisfies Partial<Ball>;
