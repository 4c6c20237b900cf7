import { fixed } from "../../figures.ts";

/** The trial in the plan's room: one ball, one line, two finishes. */
export const TRIAL_ROOM = {
  head: (dull: string, smooth: string) => `Ten shots with ${dull}, ten with ${smooth}, one ball, one line`,
  why: "Where they arrive says more about this ball on these lanes than anything else a shop can measure. Everything in the plan is then weighed by it.",
  lineHead: "The line",
  noLine: "A board says nothing without the line it was thrown on. Name it in the form, or take the one the plan plays today.",
  takeLine: (laydown: number, launch: string) => `Play the plan's: laid down on ${fixed(laydown, 1)}, ${launch}`,
  onLine: (laydown: number, launch: string) =>
    `Every shot is laid down on board ${fixed(laydown, 1)}, ${launch}. Do not move, whatever the ball does.`,
  lane: "Throw all of them on one lane, soon after each other, before others have played it.",
  finish: "Finish",
  count: (done: number, of: number) => `${done} of ${of}`,
  board: "Board at the pins",
  speed: "Speed, mph",
  reading: "Board read",
  readings: { "0.3": "from a video", "0.5": "by eye, to half a board", "1": "by eye, to a board" },
  add: "Add the shot",
  notABoard: "a board from 0 to 40",
  notASpeed: "3 to 40 mph, or nothing",
  shots: "Shots so far",
  takeAway: (board: number) => `Take the shot on board ${fixed(board, 1)} away`,
  shot: (board: number, speed: number | null) => `${fixed(board, 1)}${speed === null ? "" : ` · ${fixed(speed, 1)} mph`}`,
  between: (finish: string) =>
    `Now the ball gets ${finish}: all six sides, dry and clean. The plan's cautions hold here too; never sand or polish once scoring has begun.`,
  picture: "Where they arrived",
  pictureName: (finish: string, seen: string, before: string, after: string) =>
    `${finish}: arrived on ${seen}; the worlds had ${before} before, ${after} now`,
  key: { before: "the worlds before", after: "the worlds now", seen: "mean of the shots" },
  axis: "board at the pins",
  counts: (before: number, after: number, furtherNights: boolean) =>
    furtherNights
      ? `Before these shots ${fixed(before, 0)} worlds counted. Few of them say what was seen, so each was asked on further nights too: of those ${fixed(after, 0)} count.`
      : `Before these shots ${fixed(before, 0)} worlds counted; weighed by them they count as ${fixed(after, 0)}.`,
  thin: "Few worlds say it: see whether ball, line and lane are the ones that were bowled, and take the plan as rough.",
  toPlan: "See the plan with it",
  save: "Save the trial as a file",
  clear: "Take all shots away",
  working: "Holding it against the worlds",
} as const;
