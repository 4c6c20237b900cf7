import type { FigureId } from "#engine/video/figures";
import type { RefusalId } from "#engine/video/readSightings";
import type { NoFigure } from "#engine/video/shotRead";
import { degrees, feet, fixed, mph } from "../figures.ts";
import type { Sentence } from "../params.ts";

const onBoard = (board: number) => `board ${fixed(board, 1)}`;

/** What each figure of a shot is called, and how it is written. */
export const VIDEO_FIGURES: Readonly<Record<FigureId, { readonly name: string; readonly figure: (value: number) => string }>> = {
  launchSpeedMph: { name: "Launch speed", figure: mph },
  launchAngleDeg: { name: "Launch angle, outward", figure: (deg) => `${fixed(deg, 2)}°` },
  laydownBoard: { name: "Laydown", figure: onBoard },
  hookStartFt: { name: "Hook starts", figure: feet },
  breakpointFt: { name: "Breakpoint at", figure: feet },
  breakpointBoard: { name: "Breakpoint", figure: onBoard },
  entryAngleDeg: { name: "Entry angle", figure: degrees },
  boardAtPins: { name: "At the pins", figure: onBoard },
  speedAtPinsMph: { name: "Speed at the pins", figure: mph },
  revRateRpm: { name: "Rev rate, from the course", figure: (rpm) => `${fixed(rpm, 0)} rpm` },
};

/** Why a figure is not told. */
export const NO_FIGURE: Readonly<Record<NoFigure, string>> = {
  pinsNotSeen: "The ball was not seen past 58 ft, so nothing is said of the pins: film until it has met them.",
  firstSeenLate: "The ball was first seen past 15 ft, so nothing is said of the launch: keep the foul line and the first feet free.",
  hookNotSeen: "The course bends too little, or too little of it was seen, to say to 6 ft where the hook starts.",
  noHook: "A quarter of the slip was not gone before the pins.",
  breakpointNotSeen: "The course is too straight, or too little of it was seen, to say to 6 ft where it turns.",
  notSure: "What was seen leaves it too uncertain to be told: film closer, from higher up, or at more pictures a second.",
  revsNotSeen: "The ball was not seen rolling long enough to tell its revs from the course: follow a strip of tape near the foul line.",
};

/** Why a video, or one shot of it, is not read, and what to do about it. */
export const NOT_READ: Readonly<Record<RefusalId, Sentence>> = {
  noPictures: () => "There is not one picture in it: is it a video, and not sound alone?",
  noEdges: (p) =>
    `The lane's edges are not where the taps put them (${p.number("found")} of ${p.number("looked")} places): tap both ends of this lane's foul line and the foot of its head pin, in a picture without a bowler.`,
  cameraMoved: (p) =>
    `The camera moved (by ${fixed(p.number("px"), 1)} px and more): put it on a stand, with stabilising off. Films from the hand are not read yet.`,
  noContrast: (p) =>
    `The ball hardly differs from the lane (${fixed(p.number("levels"), 0)} grey levels; ${p.number("least")} are needed): more light, or another ball.`,
  fewMarks: (p) =>
    `${p.number("marks")} marks of the lane are too few to know the camera and to see a wrong one: give ${p.number("least")} or more, among them arrows.`,
  marksDisagree: (p) =>
    `The marks do not lie on one lane: mark ${p.number("mark")} is ${fixed(p.number("offPx"), 0)} px beside its place. Is it the head pin of this lane, and the lane's edge, not the gutter's?`,
  ballSize: (p) =>
    `The ball is ${fixed(Math.abs(p.number("percent")), 0)} % too ${p.number("percent") < 0 ? "small" : "large"} for its place: a mark lies on something else, often the gutter's outer edge for the lane's.`,
  noBall: () => "No ball was seen on the lane: is the lane in the picture the one that was played?",
  fewPictures: (p) =>
    `The shot at ${fixed(p.number("atS"), 1)} s is seen in ${p.number("pictures")} pictures; ${p.number("least")} are needed: film at 60 pictures a second, with nobody before the lane.`,
  seenLate: (p) =>
    `The shot at ${fixed(p.number("atS"), 1)} s is first seen at ${fixed(p.number("ft"), 0)} ft, later than ${p.number("mostFt")}: the bowler hides the lane; stand further to the ball's side, or higher.`,
  lostEarly: (p) =>
    `The shot at ${fixed(p.number("atS"), 1)} s is lost at ${fixed(p.number("ft"), 0)} ft, before ${p.number("leastFt")}: keep the pins in the picture and nobody before the lane.`,
  clock: (p) =>
    `The shot at ${fixed(p.number("atS"), 1)} s takes ${fixed(p.number("seconds"), 1)} s to the pins, and a ball takes ${fixed(p.number("least"), 1)} to ${fixed(p.number("most"), 1)}: is it slow motion, or a mark on another lane?`,
  offLane: (p) =>
    `The shot at ${fixed(p.number("atS"), 1)} s runs off the lane as it is marked: a ball in the gutter is not read; else a mark lies on another lane.`,
  notLikeABall: (p) =>
    `What was followed at ${fixed(p.number("atS"), 1)} s does not move like a ball (${fixed(p.number("px"), 1)} px beside a ball's course): something else was followed, or the camera moved.`,
};

/** Why a file has no pictures to be read. */
export const NO_FILM = {
  noFfmpeg: "ffmpeg is not on the path of this machine, and decodes the video: install it, or give sightings.",
  notAVideo: "It is not a video that can be decoded here: film in the telephone's most compatible format (H.264 in MP4).",
  soundAlone: "There is only sound in it.",
} as const;

export const VIDEO = {
  heading: (shots: number) => (shots === 1 ? "One shot read" : `${shots} shots read`),
  shot: (number: number, atS: number) => `Shot ${number}, over the foul line at ${fixed(atS, 2)} s`,
  interval: (low: string, high: string) => `(${low} to ${high})`,
  ends: "Figures in brackets: 90 % interval. Boards count from the bowler's hand side.",
  synthetic: "Errors are shown on computed videos only; check ten of your own shots against boards and speeds seen otherwise.",
  refused: "Not read",
} as const;
