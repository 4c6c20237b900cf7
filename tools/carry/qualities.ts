import type { Quality, QualityName } from "#engine/pins/carryGrid";
import { QUALITIES, USUAL } from "./design.ts";
import { committee, type Network } from "./emulator.ts";
import { type Candidate, mean, networkInput, TYPICAL } from "./fit.ts";

/** Places and angles of pocket hits, over which the effect of a quality is averaged. */
const OFFSETS_IN = [1.75, 2.25, 2.75, 3.25, 3.75];
const ENTRIES_DEG = [3, 4, 5, 6];

type Varied = keyof typeof TYPICAL;

/** Strike chance of a pocket hit under each candidate, with one quality set. */
export function pocketChances(
  networks: readonly Network[],
  candidates: readonly Candidate[],
  name: Varied,
  value: number,
): readonly number[] {
  const ask = committee(networks);
  return candidates.map(({ coefficients }) =>
    mean(
      OFFSETS_IN.flatMap((offsetIn) =>
        ENTRIES_DEG.map((entryDeg) => ask(networkInput({ ...TYPICAL, [name]: value, offsetIn, entryDeg }, coefficients))[0]),
      ),
    ),
  );
}

const SIMULATED: Readonly<Record<QualityName, Varied>> = { speedMph: "speedMph", slipMps: "slip", massLb: "massLb" };

/** Log odds that one unit of each quality adds, between the ends of what was simulated. */
export function slopesOf(networks: readonly Network[], candidates: readonly Candidate[]): Readonly<Record<QualityName, Quality>> {
  const logOdds = (p: number) => Math.log(p / (1 - p));
  const qualityOf = (name: QualityName): Quality => {
    const varied = SIMULATED[name];
    const [low, high] = QUALITIES[varied];
    const [least, most] = [low, high].map((value) => mean(pocketChances(networks, candidates, varied, value).map(logOdds)));
    const [from, to] = USUAL[varied];
    return { typical: (from + to) / 2, low, high, slope: Math.round((1000 * (most - least)) / (high - low)) / 1000 };
  };
  return { speedMph: qualityOf("speedMph"), slipMps: qualityOf("slipMps"), massLb: qualityOf("massLb") };
}
