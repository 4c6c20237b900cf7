import type { Hand } from "../delivery/bowler.ts";
import type { LaneMark } from "./calibrate.ts";
import type { Picture, Pixel } from "./pinhole.ts";

/** The ball in one picture: when, the middle of its outline and the outline's mean radius, px. */
export interface BallSeen extends Pixel {
  /** s, by the video's own clock. */
  readonly t: number;
  readonly radius: number;
}

/** What whoever followed the ball is known to do wrong alike in every picture. */
export interface TrackerErrors {
  /** Standard deviation of a shift that all of a shot's sightings share, px. */
  readonly biasPx: Pixel;
  /** How long the camera takes to read a picture out from its first line to its last, s, and how well that is known. */
  readonly readoutS: number;
  readonly readoutWithinS: number;
}

/** What a tracker saw in one run of pictures. Lengths in m, axes of docs/units-and-axes.md. */
export interface Sightings {
  readonly picture: Picture;
  readonly hand: Hand;
  readonly marks: readonly LaneMark[];
  /** Pictures in which the ball was seen, by time. */
  readonly seen: readonly BallSeen[];
  readonly errors: TrackerErrors;
}

/** Where nothing is said: the middle is right to a tenth of a pixel or two, time stamps are those of the sightings. Chosen. */
export const USUAL_ERRORS: TrackerErrors = { biasPx: { u: 0.05, v: 0.1 }, readoutS: 0, readoutWithinS: 0 };
