/** Where a cause lies: what is asked first parts the ball from everything else. */
export type CauseKind = "lane" | "release" | "ball" | "pins";

/** One thing that may be wrong. */
export interface Cause {
  readonly kind: CauseKind;
  /** How often it is met before anything is known, relative to the others: **chosen** after the trade's common practice. */
  readonly weight: number;
  /** Whether the answer would be work on the ball: its surface, or heat. */
  readonly isSurface: boolean;
}

/** Add a cause by a record here, its words, and, where it shows in the ball's motion, how it changes it in `changes.ts`; a test walks all three. */
export const CAUSES = {
  "lane.drier": { kind: "lane", weight: 2, isSurface: false },
  "lane.oilier": { kind: "lane", weight: 2, isSurface: false },
  "lane.transition": { kind: "lane", weight: 2.5, isSurface: false },
  "release.slower": { kind: "release", weight: 1, isSurface: false },
  "release.faster": { kind: "release", weight: 1, isSurface: false },
  "release.lessTurn": { kind: "release", weight: 1.2, isSurface: false },
  "release.tired": { kind: "release", weight: 1, isSurface: false },
  "release.grip": { kind: "release", weight: 0.8, isSurface: false },
  "ball.faded": { kind: "ball", weight: 3, isSurface: true },
  "ball.oilSoaked": { kind: "ball", weight: 2, isSurface: true },
  "ball.dirty": { kind: "ball", weight: 1.2, isSurface: false },
  "ball.tooDull": { kind: "ball", weight: 1.5, isSurface: true },
  "ball.tooSmooth": { kind: "ball", weight: 1.5, isSurface: true },
  "ball.tooStrong": { kind: "ball", weight: 1.2, isSurface: false },
  "ball.tooWeak": { kind: "ball", weight: 1.2, isSurface: false },
  "ball.unsuited": { kind: "ball", weight: 1.5, isSurface: true },
  "ball.uneven": { kind: "ball", weight: 0.5, isSurface: true },
  "ball.crack": { kind: "ball", weight: 0.4, isSurface: false },
  "ball.spareWorn": { kind: "ball", weight: 1, isSurface: true },
  "ball.tooLight": { kind: "ball", weight: 0.5, isSurface: false },
  "pins.carry": { kind: "pins", weight: 1.2, isSurface: false },
} as const satisfies Record<string, Cause>;

export type CauseId = keyof typeof CAUSES;
export const CAUSE_IDS = Object.keys(CAUSES) as readonly CauseId[];

/** A first cause less likely than this is no answer yet. */
const CLEAR_FROM = 0.4;

/** Whether no cause stands out yet. */
export function isUnclear([first]: readonly { readonly probability: number }[]): boolean {
  return first.probability < CLEAR_FROM;
}
