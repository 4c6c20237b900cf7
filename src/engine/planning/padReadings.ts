import type { Assumed } from "../assumptions.ts";
import { effectiveRaUm, type Finish, readingOfEffectiveRa } from "../surface/finish.ts";

/** What the shop's tester read on a ball fresh from the bench: the mean of its sides. */
export interface PadReading {
  readonly finish: Finish;
  /** µin, > 0. */
  readonly raMicroinch: number;
}

/** From one fresh ball to the next of one finish a tester reads so much more or less, of its logarithm: pads wear, hands press. Chosen. */
const BALL_SD = 0.15;
/** What a reading is as the law takes it is not known better, for all of them alike: half of ln(1.61/1.33)/1.645 (range of `roughness.readingFactor`). */
const FACTOR_SD = 0.06;

/**
 * Logarithm of how well a world says what was read, up to a constant: 0 without readings. Each reading is off by itself, and all of them together by one factor; that is a normal
 * law with covariance s² δ + f², whose inverse is by Sherman and Morrison (1950).
 */
export function fitOfReadings(readings: readonly PadReading[], assumed: Assumed): number {
  const off = readings.map(({ finish, raMicroinch }) =>
    Math.log(raMicroinch / readingOfEffectiveRa(effectiveRaUm(finish, assumed), assumed)),
  );
  const squares = off.reduce((sum, one) => sum + one * one, 0);
  const together = off.reduce((sum, one) => sum + one, 0);
  const own = BALL_SD ** 2;
  const shared = FACTOR_SD ** 2;
  return 0 - (squares - (shared * together * together) / (own + readings.length * shared)) / (2 * own);
}
