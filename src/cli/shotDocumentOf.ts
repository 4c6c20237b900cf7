import { jobOfShot } from "#contract/job/writeJob";
import type { UnaimedShot } from "#contract/resolve/question";
import type { ShotDocument } from "#contract/shotDocument";
import type { Shot } from "#engine/motion/shot";
import type { ShotBand } from "#engine/planning/shotBand";

/** A shot as data. */
export function shotDocumentOf(
  shot: Shot,
  band: ShotBand | null,
  asked: UnaimedShot,
  defaults: readonly string[],
  engineVersion: string,
): ShotDocument {
  const { samples, gutter, phases, flare, energy, reachedPins } = shot;
  return {
    gritwright: 1,
    kind: "shot",
    engineVersion,
    seed: asked.seed,
    inputs: jobOfShot(asked),
    defaults: [...defaults],
    samples: samples.map((sample) => ({ ...sample, velocityMps: [...sample.velocityMps], omegaRadps: [...sample.omegaRadps] })),
    gutter,
    phases,
    flare,
    energy,
    reachedPins,
    band,
  };
}
