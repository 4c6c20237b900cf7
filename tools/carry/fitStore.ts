import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deriveSeed } from "#engine/random";
import type { Design } from "./design.ts";
import { committee, type Network, type Sample } from "./emulator.ts";
import { type Candidate, gelmanRubin, mean, membersOf, sampleOf, trainCommittee, walk } from "./fit.ts";
import type { Outcome } from "./hit.ts";

/** The fit: the emulator, candidates spread over all walks, and how well the walks agree. */
export interface Fit {
  readonly networks: readonly Network[];
  readonly candidates: readonly Candidate[];
  readonly accepted: number;
  /** Gelman & Rubin's ratio, the worst coordinate's. */
  readonly worstRatio: number;
  /** Log loss of the strike chance on runs that the networks did not learn from, and that of their mean alone. */
  readonly lossUnseen: number;
  readonly lossOfMean: number;
}

const COMMITTEE = 3;
const EPOCHS = 40;
const WALKS = 4;
const STEPS = 5000;
const CANDIDATES = 400;
/** One run in so many is kept from the networks to test them. */
const UNSEEN_EVERY = 10;
const SEED = 17;
const STRIKE_KIND = 0;

/** The fit to a calibration, from disk if it is there. */
export function fitTo(design: Design, outcomes: readonly Outcome[], folder: string): Fit {
  const path = join(folder, `${design.name}-${design.count}.fit.json`);
  if (existsSync(path)) return revived(readFileSync(path, "utf8"));
  const samples = outcomes.map((outcome, index) => sampleOf(design.run(index), outcome));
  const seen = samples.filter((_, i) => i % UNSEEN_EVERY !== 0);
  const unseen = samples.filter((_, i) => i % UNSEEN_EVERY === 0);
  console.log(`Training ${COMMITTEE} networks on ${seen.length} runs`);
  const networks = trainCommittee(seen, COMMITTEE, EPOCHS, SEED);
  console.log(`${WALKS} walks of ${STEPS} steps`);
  const chains = Array.from({ length: WALKS }, (_, i) => walk(networks, STEPS, deriveSeed(SEED, i)));
  const candidates = membersOf(chains, CANDIDATES);
  const fit = {
    networks,
    candidates,
    accepted: mean(chains.map(({ accepted }) => accepted)),
    worstRatio: Math.max(...candidates[0].unit.map((_, coordinate) => gelmanRubin(chains, coordinate))),
    ...losses(networks, unseen),
  };
  writeFileSync(
    path,
    JSON.stringify(fit, (_, value) => (value instanceof Float64Array ? { floats: Array.from(value) } : value)),
  );
  return fit;
}

function losses(networks: readonly Network[], unseen: readonly Sample[]): Pick<Fit, "lossUnseen" | "lossOfMean"> {
  const ask = committee(networks);
  const isStrike = unseen.map(({ kind }) => kind === STRIKE_KIND);
  const share = isStrike.filter(Boolean).length / unseen.length;
  const loss = (chance: (index: number) => number) => mean(isStrike.map((strike, i) => -Math.log(strike ? chance(i) : 1 - chance(i))));
  return { lossUnseen: loss((i) => ask(unseen[i].input)[STRIKE_KIND]), lossOfMean: loss(() => share) };
}

function revived(text: string): Fit {
  return JSON.parse(text, (_, value) => (Array.isArray(value?.floats) ? Float64Array.from(value.floats) : value));
}

/** The coefficients of the table's runs: every so many of the candidates. */
export function tableMembers(
  { candidates }: Fit,
  count: number,
): { readonly members: readonly Candidate["coefficients"][]; readonly digest: string } {
  const every = Math.floor(candidates.length / count);
  const members = candidates
    .filter((_, i) => i % every === 0)
    .slice(0, count)
    .map(({ coefficients }) => coefficients);
  return { members, digest: createHash("sha256").update(JSON.stringify(members)).digest("hex").slice(0, 12) };
}
