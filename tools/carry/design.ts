import { deriveSeed, uniformSource } from "#engine/random";
import { COEFFICIENT_NAMES, type Coefficients, coefficientsAt } from "./coefficients.ts";
import type { Hit } from "./hit.ts";

/** Everything that one run needs. */
export interface Run {
  readonly hit: Hit;
  readonly coefficients: Coefficients;
  /** Where the pins' places and weights come from. */
  readonly chance: () => number;
}

/** A numbered list of runs, made anew from its seed whenever it is wanted, so that only the outcomes need be kept. */
export interface Design {
  readonly name: string;
  readonly count: number;
  run(index: number): Run;
}

type Range = readonly [low: number, high: number];
interface HitRanges {
  readonly offsetIn: Range;
  readonly entryDeg: Range;
  readonly speedMph: Range;
  readonly slip: Range;
  readonly verticalSpin: Range;
  readonly massLb: Range;
}

/** Speeds of slow and fast bowlers at the pins, balls that still slip and spin, light balls and heavy. */
export const QUALITIES = { speedMph: [11, 20], slip: [0, 3], verticalSpin: [-5, 20], massLb: [12, 16] } as const;
/** What most bowlers bring: the table's hits. The effect of what lies outside is stated in docs/model/carry.md. */
export const USUAL = { speedMph: [14, 19], slip: [0, 1.5], verticalSpin: [0, 10], massLb: [14, 16] } as const;
/** The hits that the published facts speak of: about the pocket, from straight to steep. */
export const POCKET_SIDE = { offsetIn: [0.25, 4.75], entryDeg: [0, 8] } as const;
/** Whatever still meets the head pin, on either side. */
export const WHOLE_PIN = { offsetIn: [-7, 7], entryDeg: [0, 8] } as const;

const CALIBRATION_SEED = 20261125;
const TABLE_SEED = 5950;
/** One run in so many of the table goes over the whole pin, the others about the pocket. */
const WHOLE_PIN_EVERY = 4;

/** A design in words that can be sent to another process. */
export type Description =
  | { readonly kind: "calibration"; readonly count: number }
  | { readonly kind: "table"; readonly count: number; readonly members: readonly Coefficients[]; readonly membersDigest: string };

export function designOf(description: Description): Design {
  return description.kind === "calibration"
    ? calibrationDesign(description.count)
    : tableDesign(description.count, description.members, description.membersDigest);
}

/** Hits about the pocket under coefficients from all over their ranges, for the emulator. */
function calibrationDesign(count: number): Design {
  return {
    name: `calibration-${CALIBRATION_SEED}`,
    count,
    run(index) {
      const chance = uniformSource(deriveSeed(CALIBRATION_SEED, index));
      const hit = hitFrom(chance, { ...POCKET_SIDE, ...QUALITIES });
      return { hit, coefficients: coefficientsAt(COEFFICIENT_NAMES.map(chance)), chance };
    },
  };
}

/** Hits for the table, each fitted member of the coefficients in its turn. */
function tableDesign(count: number, members: readonly Coefficients[], membersDigest: string): Design {
  return {
    name: `table-${TABLE_SEED}-${membersDigest}`,
    count,
    run(index) {
      const chance = uniformSource(deriveSeed(TABLE_SEED, index));
      const isWide = Math.floor(index / members.length) % WHOLE_PIN_EVERY === 0;
      const hit = hitFrom(chance, { ...(isWide ? WHOLE_PIN : POCKET_SIDE), ...USUAL });
      return { hit, coefficients: members[index % members.length], chance };
    },
  };
}

function hitFrom(chance: () => number, ranges: HitRanges): Hit {
  const within = ([low, high]: Range): number => low + (high - low) * chance();
  return {
    offsetIn: within(ranges.offsetIn),
    entryDeg: within(ranges.entryDeg),
    speedMph: within(ranges.speedMph),
    slip: within(ranges.slip),
    verticalSpin: within(ranges.verticalSpin),
    massLb: within(ranges.massLb),
  };
}
