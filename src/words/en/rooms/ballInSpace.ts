import type { SideId } from "#engine/surface/padWork/sides";
import { SIDE_NAMES } from "../padWork.ts";

/** English text of the ball in space. */
export const BALL_IN_SPACE = {
  title: "The ball",
  picture: "The ball in space: sides, holes, axis, track and the pad work that was signed",
  turnBy: "Turn the ball: with a finger, with these buttons, or with the arrow keys",
  turns: { left: "Turn left", right: "Turn right", up: "Turn up", down: "Turn down" },
  face: "Look at",
  faceOf: (side: SideId) => `Look at the side ${SIDE_NAMES[side]}`,
  pap: "PAP",
  pin: "pin",
  massBias: "mass bias",
  noPap: "The bowler's PAP is not known, so axis, track and layout are not drawn.",
  noPin: "The layout is not known, so the pin is not drawn.",
  noDrillingAngle: "The drilling angle is not known, so the mass bias is not drawn.",
  massBiasIs: (deg: number) => `Drilling angle ${deg}°: at the pin, from the line to the PAP to the line to the mass bias.`,
  trackIs: "Track: computed from PAP and axis tilt, before any flare.",
  work: (day: string) => `Grains: the pad work signed on the ticket of ${day}, denser where the pad worked more.`,
  noWork: "No pad work is signed yet, so no grains are drawn.",
  columns: { side: "side", seconds: "seconds", reading: "last reading" },
} as const;
