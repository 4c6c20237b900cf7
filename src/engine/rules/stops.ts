/** What is known of a ball before work starts. Each unanswered question is a `false`. */
export interface Findings {
  readonly crack: boolean;
  readonly hollowSound: boolean;
  readonly claimOpen: boolean;
  readonly cold: boolean;
  readonly serialPhotographed: boolean;
  readonly hasInserts: boolean;
  readonly insertsMasked: boolean;
}

export const NO_FINDINGS: Findings = {
  crack: false,
  hollowSound: false,
  claimOpen: false,
  cold: false,
  serialPhotographed: true,
  hasInserts: false,
  insertsMasked: false,
};

/** Reasons not to start, or not yet. A hard stop ends the work; the others are put right first. All common practice. */
export interface Stop {
  readonly holds: (findings: Findings) => boolean;
  readonly hard: boolean;
}

export const STOPS = {
  crack: { holds: ({ crack }) => crack, hard: true },
  hollowSound: { holds: ({ hollowSound }) => hollowSound, hard: true },
  claimOpen: { holds: ({ claimOpen }) => claimOpen, hard: true },
  coldBall: { holds: ({ cold }) => cold, hard: false },
  serialNotPhotographed: { holds: ({ serialPhotographed }) => !serialPhotographed, hard: false },
  insertsNotMasked: { holds: ({ hasInserts, insertsMasked }) => hasInserts && !insertsMasked, hard: false },
} as const satisfies Record<string, Stop>;

export type StopId = keyof typeof STOPS;

export function stopsFor(findings: Findings): readonly StopId[] {
  return (Object.keys(STOPS) as StopId[]).filter((id) => STOPS[id].holds(findings));
}
