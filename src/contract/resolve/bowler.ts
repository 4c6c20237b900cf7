import type { Bowler, DeliveryKnown } from "#engine/delivery/bowler";
import { HOOK_WORDS, KNOWN_BY_WORD, SPEED_WORDS, TYPICAL_SPREAD } from "#engine/delivery/words";
import type { JobBowler } from "../job/bowler.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

/** A bowler with every number filled in: from the words where there are words, else from a medium bowler. */
export function resolveBowler(job: JobBowler | undefined, defaults: DefaultsTaken): Bowler {
  const speed = SPEED_WORDS[job?.speed ?? "medium"];
  const hook = HOOK_WORDS[job?.hook ?? "medium"];
  const spread = job?.spread;
  return {
    ...(job?.plays === undefined ? {} : { plays: job.plays }),
    name: defaults.or("bowler.name", job?.name, "Bowler"),
    hand: defaults.or("bowler.hand", job?.hand, "right"),
    speedMph: defaults.or("bowler.speedMph", job?.speedMph, speed.speedMph),
    revRateRpm: defaults.or("bowler.revRateRpm", job?.revRateRpm, hook.revRateRpm),
    axisRotationDeg: defaults.or("bowler.axisRotationDeg", job?.axisRotationDeg, hook.axisRotationDeg),
    axisTiltDeg: defaults.or("bowler.axisTiltDeg", job?.axisTiltDeg, hook.axisTiltDeg),
    ...guessed(job),
    spread: {
      launchAngleDeg: defaults.or("bowler.spread.launchAngleDeg", spread?.launchAngleDeg, TYPICAL_SPREAD.launchAngleDeg),
      laydownBoards: defaults.or("bowler.spread.laydownBoards", spread?.laydownBoards, TYPICAL_SPREAD.laydownBoards),
      speedMph: defaults.or("bowler.spread.speedMph", spread?.speedMph, TYPICAL_SPREAD.speedMph),
      revRateRpm: defaults.or("bowler.spread.revRateRpm", spread?.revRateRpm, TYPICAL_SPREAD.revRateRpm),
      axisRotationDeg: defaults.or("bowler.spread.axisRotationDeg", spread?.axisRotationDeg, TYPICAL_SPREAD.axisRotationDeg),
    },
  };
}

/** How well the numbers are known: as the file says, else by the word where it gives none; nothing where all were measured. */
function guessed(job: JobBowler | undefined): Pick<Bowler, "known"> {
  const entries = (Object.keys(KNOWN_BY_WORD) as (keyof DeliveryKnown)[]).flatMap((id) => {
    const sd = job?.known?.[id] ?? (job?.[id] === undefined ? KNOWN_BY_WORD[id] : null);
    return sd === null ? [] : [[id, sd] as const];
  });
  return entries.length === 0 ? {} : { known: Object.fromEntries(entries) };
}
