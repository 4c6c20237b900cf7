import type { LinePoint, ReadingLineInput } from "#drawing/readingLine";
import { assume } from "#engine/assumptions";
import { effectiveRaUm, parseFinish, readingOfEffectiveRa } from "#engine/surface/finish";
import type { SideId } from "#engine/surface/padWork/sides";
import { MICROINCH, MICROMETRE } from "#engine/units";
import { PLACE_LABELS } from "#words/en/rooms/measure";
import { inUnit, READ_ORDER, type RoughnessUnit } from "./entries.ts";
import type { Judged } from "./judged.ts";
import { meanOf, type Read } from "./readings.ts";

/** The means of all sides that a tester has read, in the shop's unit, with what the finish should read. */
export function lineOf(readAt: (side: SideId) => Read | null, { off, wanted }: Judged, unit: RoughnessUnit): ReadingLineInput {
  const points = READ_ORDER.flatMap((side): LinePoint[] => {
    const mean = meanOf(readAt(side)?.um ?? []);
    return mean === null ? [] : [{ name: PLACE_LABELS[side], value: inUnit(mean, unit), isOff: off.some((one) => one.side === side) }];
  });
  return { points, wanted: wanted === null ? null : { name: wanted, value: wantedIn(wanted, unit) }, unit };
}

function wantedIn(finish: string, unit: RoughnessUnit): number {
  const microinch = readingOfEffectiveRa(effectiveRaUm(parseFinish(finish)), assume());
  return inUnit((microinch * MICROINCH) / MICROMETRE, unit);
}
