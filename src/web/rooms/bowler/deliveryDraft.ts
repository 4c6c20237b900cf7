import type { Bowler } from "#contract/records/bowler";
import { figureOrNull, wordOrNull } from "../../shop/typedValues.ts";
import type { Typed } from "../../shop/useEditing.ts";
import type { SpeedUnit } from "../../shop/zone.ts";

export type Delivery = Bowler["deliveries"][number];
export type Way = "numbers" | "words";

export interface DeliveryDraft {
  readonly way: Way;
  /** What was typed one way stays while the other is looked at. */
  readonly typed: Typed;
}

export const EMPTY_DELIVERY: DeliveryDraft = {
  way: "numbers",
  typed: { how: "video", speedMph: "", revRateRpm: "", axisRotationDeg: "", axisTiltDeg: "", speed: "", hook: "", note: "" },
};

/** The delivery as it is kept; null while nothing of it has been written. */
export function deliveryOf({ way, typed }: DeliveryDraft, at: string, unit: SpeedUnit): Delivery | null {
  const nothing = { speedMph: null, revRateRpm: null, axisRotationDeg: null, axisTiltDeg: null, speed: null, hook: null, plays: null };
  const speed = figureOrNull(typed.speedMph);
  const told =
    way === "numbers"
      ? {
          speedMph: typeof speed === "number" ? unit.mph(speed) : speed,
          revRateRpm: figureOrNull(typed.revRateRpm),
          axisRotationDeg: figureOrNull(typed.axisRotationDeg),
          axisTiltDeg: figureOrNull(typed.axisTiltDeg),
        }
      : { speed: wordOrNull<NonNullable<Delivery["speed"]>>(typed.speed), hook: wordOrNull<NonNullable<Delivery["hook"]>>(typed.hook) };
  if (Object.values(told).every((value) => value === null)) return null;
  const how = way === "words" ? "word only" : (typed.how as Delivery["how"]);
  return { ...nothing, ...told, at, how, note: typed.note.trim() };
}

/** Newest first, whatever order they were written in. */
export function newestFirst(deliveries: readonly Delivery[]): readonly Delivery[] {
  return deliveries.toSorted((a, b) => b.at.localeCompare(a.at));
}
