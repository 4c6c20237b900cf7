/** Above this makers' own limits begin, and covers have cracked (makers' warnings; second-hand), °F. */
export const WARN_ABOVE_F = 130;
/** Never above this, whatever a maker says (makers' warnings, warranties void; second-hand), °F. */
export const NEVER_ABOVE_F = 140;

export interface HeatVerdict {
  readonly verdict: "fine" | "warn" | "refuse";
  /** The most that this ball may get, °F. */
  readonly limitF: number;
  readonly limitBy: "maker" | "anybody";
}

/** Whether oil may be drawn out of a ball at a temperature. @param makerLimitF of the ball's maker; null where nobody has looked it up */
export function heatVerdict(temperatureF: number, makerLimitF: number | null): HeatVerdict {
  const isMakers = makerLimitF !== null && makerLimitF < NEVER_ABOVE_F;
  const limitF = isMakers ? makerLimitF : NEVER_ABOVE_F;
  const limit = { limitF, limitBy: isMakers ? ("maker" as const) : ("anybody" as const) };
  if (temperatureF > limitF) return { verdict: "refuse", ...limit };
  return { verdict: temperatureF > WARN_ABOVE_F ? "warn" : "fine", ...limit };
}
