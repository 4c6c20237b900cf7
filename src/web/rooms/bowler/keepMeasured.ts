import { DELIVERY_NUMBERS } from "#contract/deliveryFile";
import type { Bowler } from "#contract/records/bowler";
import type { BowlerMeasured } from "#engine/learning/delivery/measureBowler";
import type { BowlerChange } from "./changeBowler.ts";
import { type Delivery, newestFirst } from "./deliveryDraft.ts";

type DeliveryKey = (typeof DELIVERY_NUMBERS)[number];
type Spread = NonNullable<Bowler["spread"]>;

/** Spreads that shots can tell and the records keep. */
const SPREADS = ["speedMph", "revRateRpm", "axisRotationDeg"] as const;
const NO_SPREAD: Spread = { launchAngleDeg: null, laydownBoards: null, speedMph: null, revRateRpm: null, axisRotationDeg: null };

/** What of a measurement is kept, figure by figure. */
export interface Keeping {
  readonly measured: readonly DeliveryKey[];
  /** Not measured this time, but in the delivery before, which was measured too. */
  readonly carried: readonly DeliveryKey[];
  /** The delivery they come from. */
  readonly before: Delivery | null;
  readonly empty: readonly DeliveryKey[];
  readonly spread: readonly (typeof SPREADS)[number][];
}

/** What was told by the bowler or estimated is never carried into a delivery that says it was measured. */
export function keepingOf(measured: BowlerMeasured, bowler: Bowler): Keeping {
  const [newest] = newestFirst(bowler.deliveries);
  const before = newest !== undefined && (newest.how === "video" || newest.how === "sensor") ? newest : null;
  const missing = DELIVERY_NUMBERS.filter((key) => measured[key].from === "taken");
  const carried = missing.filter((key) => before !== null && before[key] !== null);
  return {
    measured: DELIVERY_NUMBERS.filter((key) => measured[key].from === "measured"),
    carried,
    before,
    empty: missing.filter((key) => !carried.includes(key)),
    // A spread of 0 is one that the reading hides, not one that is known.
    spread: SPREADS.filter((key) => (measured[key].spread ?? 0) > 0),
  };
}

/**
 * The change of the bowler's record: the delivery as the newest, the spread and the PAP where they were measured; rounded to what the figures carry.
 *
 * @param at instant of keeping
 */
export function measuredChange(measured: BowlerMeasured, bowler: Bowler, at: string, note: string): BowlerChange {
  const keeping = keepingOf(measured, bowler);
  const numberOf = (key: DeliveryKey): number | null => {
    if (keeping.measured.includes(key)) return rounded(measured[key].mean.value, key === "revRateRpm" ? 0 : 1);
    return keeping.carried.includes(key) ? (keeping.before?.[key] ?? null) : null;
  };
  const delivery: Delivery = {
    at,
    how: "video",
    speedMph: numberOf("speedMph"),
    revRateRpm: numberOf("revRateRpm"),
    axisRotationDeg: numberOf("axisRotationDeg"),
    axisTiltDeg: numberOf("axisTiltDeg"),
    speed: null,
    hook: null,
    plays: null,
    note,
  };
  const spread = Object.fromEntries(keeping.spread.map((key) => [key, rounded(measured[key].spread ?? 0, 2)]));
  const { pap } = measured;
  return {
    deliveries: [...bowler.deliveries, delivery],
    ...(keeping.spread.length === 0 ? {} : { spread: { ...NO_SPREAD, ...bowler.spread, ...spread } }),
    ...(pap === null ? {} : { pap: { overIn: rounded(pap.overIn.mean.value, 2), upIn: rounded(pap.upIn.mean.value, 2) } }),
  };
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
