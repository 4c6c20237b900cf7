import type { Finish } from "../surface/finish.ts";
import { COVERS, type Cover, MIDDLE_COVER } from "./covers.ts";

export type CoverId = keyof typeof COVERS;
export const COVER_IDS = Object.keys(COVERS) as unknown as readonly [CoverId, ...CoverId[]];

/** What the ball is in the bag for; it decides what a good finish is. */
export const BALL_JOBS = ["strike", "control", "spare", "house"] as const;
export type BallJob = (typeof BALL_JOBS)[number];

/** What may stand in a ball without anybody knowing it. */
export type UnknownOfBall = "cover" | "finish";

export interface Ball {
  readonly name: string;
  readonly cover: CoverId;
  readonly job: BallJob;
  readonly massLb: number;
  readonly diameterIn: number;
  /** Radius of gyration about the low-RG (pin) axis. */
  readonly rgIn: number;
  /** High minus low RG. */
  readonly differentialIn: number;
  /** High minus middle RG, 0 … differential. */
  readonly intermediateDifferentialIn: number;
  /** Three radii of gyration as they stand, instead of RG and differentials (shots only). */
  readonly principalRgIn: readonly [number, number, number] | null;
  /** Distance over the surface from the pin to the bowler's positive axis point; a quarter circle is about 6.75 in. */
  readonly pinToPapIn: number;
  /** Angle at the pin between the high-RG axis and the line to the positive axis point. */
  readonly drillingAngleDeg: number;
  /** The finish that is on the ball today. */
  readonly finish: Finish;
  /** A roughness reading of today's surface, if one was taken. */
  readonly raMicroinch: number | null;
  /** What nobody knows of it: `cover` and `finish` then stand for all that they may be, and are no more than a middle. */
  readonly unknown?: readonly UnknownOfBall[];
}

/** Whether somebody knows it; else it stands for all that it may be. */
export function isKnown({ unknown = [] }: Pick<Ball, "unknown">, what: UnknownOfBall): boolean {
  return !unknown.includes(what);
}

/** The record of a cover. */
export function coverOf(cover: CoverId): Cover {
  return COVERS[cover];
}

/** The cover of a ball; null where nobody knows it. */
export function knownCover(ball: Pick<Ball, "cover" | "unknown">): CoverId | null {
  return isKnown(ball, "cover") ? ball.cover : null;
}

/** The cover of a ball, or where nobody knows it all that it may be: a ball that is to strike has polyester hardly ever (common practice). */
export function coversOf(ball: Pick<Ball, "cover" | "unknown" | "job">): readonly CoverId[] {
  const known = knownCover(ball);
  if (known !== null) return [known];
  return ball.job === "spare" || ball.job === "house" ? COVER_IDS : COVERS_THAT_STRIKE;
}

/** Covers that a ball may have which is to strike. */
export const COVERS_THAT_STRIKE: readonly CoverId[] = COVER_IDS.filter((cover) => COVERS[cover].strikes);

/** What holds for a cover; where nobody knows it, what holds for any that it may be: the dullest finish of the strictest, and care as of resin. */
export function careRules(cover: CoverId | null): Pick<Cover, "neverBelow" | "reactive" | "wetPaper"> {
  return coverOf(cover ?? MIDDLE_COVER);
}
