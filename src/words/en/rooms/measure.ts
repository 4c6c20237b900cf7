import type { SideId } from "#engine/surface/padWork/sides";
import { OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import { SIDE_LABELS, SIDE_NAMES } from "../padWork.ts";

const COUNTS = ["none", "one", "two", "three", "four", "five", "six"];
const inWords = (count: number): string => COUNTS[count] ?? String(count);
const first = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
const are = (count: number): string => (count === 1 ? "is" : "are");
const OFF = { tooDull: "too dull", tooSmooth: "too smooth", likeReference: "like the reference ball" } as const;
const AGAINST_OTHERS = { tooDull: "duller", tooSmooth: "smoother", likeReference: "like the reference ball" } as const;

/** What is said of the sides that are off: their names, which way, and whether so few readings can tell. */
export interface OffSides {
  readonly names: readonly string[];
  readonly way: keyof typeof OFF;
  readonly isSure: boolean;
  /** The finish they are held against; null where they are held against each other. */
  readonly wanted: string | null;
  /** How many sides were read, of how many. */
  readonly read: number;
  readonly of: number;
}

/** English text of measuring: sheen against a reference ball, or a tester; per side, before and after. */
export const MEASURE = {
  title: "Measure",
  titleOf: (ball: string) => `Measure ${ball}`,
  when: { before: "before", after: "after", between: "between visits" },
  whens: { before: "Before", after: "After" },
  how: {
    tester: "tester",
    "reference ball": "reference ball",
    durometer: "durometer",
    scale: "scale",
    calliper: "calliper",
  },
  ways: { tester: "Tester", "reference ball": "By sheen" },
  whenLabel: "When",
  howLabel: "How",
  chooseBall: "Which ball",
  chooseBallWhy: "Readings stay with a ball. Find it, or come here from its ticket.",
  toTicket: "To the ticket",
  otherBall: "Another ball",
  afterWork: (abrasive: string) => `after ${abrasive}`,
  beforeWork: (track: string | null, offTrack: string | null) =>
    `before: ${[track === null ? null : `track ${track}`, offTrack === null ? null : `off track ${offTrack}`].filter((part) => part !== null).join(", ")}`,

  reference: "Reference ball",
  unrecordedReference: "one that is not in the records",
  comparisons: { duller: "duller", "the same": "the same", smoother: "smoother" },
  sheenKeys: { duller: "Duller", "the same": "Same", smoother: "Smoother" },
  sheenHelp: "Same light, same angle, dry and clean. Run a fingertip over both.",
  eye: "By eye and fingertip: good to about half a grit step.",

  front: "The ball with the grip towards you",
  back: "The back of the ball",
  trackUsual: "Track drawn where it usually is: the bowler’s PAP is not known.",
  track: "track",
  spot: (place: string, reading: string) => `${place}: ${reading}`,
  notRead: "not read yet",
  lies: {
    grip: "grip up",
    opposite: "grip down",
    left: "left of grip up",
    right: "right of grip up",
    fingers: "fingers up",
    thumb: "thumb up",
    track: "where the ball rolls",
    "off track": "where it never touches the lane",
  },
  sideOf: (at: number, of: number) => `side ${at} of ${of}`,
  readingOf: (place: string, unit: string) => `${first(place)}, ${unit}`,
  mean: (figure: string, unit: string) => `mean ${figure} ${unit}`,
  oneMore: "one more",
  clearLast: "Clear the last sign",
  next: "Next side",
  saveIt: "Save",
  already: (reading: string) => `Saved here: ${reading}`,
  takeBack: "Take it back",
  also: "Also:",
  alsoPlaces: { track: "in the track", "off track": "off the track" },
  openFile: "open a tester file",
  notANumber: (written: string, most: string) => `“${written}” can’t be a reading. Allowed: numbers above 0, up to ${most}.`,

  line: "The readings on one line",
  lineOf: (readings: string) => `Mean of each place, from smooth to dull: ${readings}.`,
  beforeAfter: "Before and after",
  beforeAfterColumns: { place: "place", before: "before", after: "after" },

  verdict: "Do the sides match?",
  needMore: (sides: number) => `${first(inWords(sides))} more ${sides === 1 ? "side" : "sides"} and I can tell.`,
  match: (sides: number, of: number, wanted: string | null) => {
    const whole = sides === of ? `All ${inWords(of)}` : `The ${inWords(sides)} read so far`;
    return `${whole} match ${wanted ?? "each other"}.`;
  },
  cannotTell: (wanted: string | null) => `Close to ${wanted ?? "each other"}, but too few readings to be sure. Take one more on each side.`,
  off: ({ names, way, isSure, wanted, read, of }: OffSides) => {
    const whole = read === of ? `All ${inWords(of)}` : `The ${inWords(read)} read so far`;
    const who = names.length === read && read > 2 ? whole : first(listed(names));
    const verb = isSure ? are(names.length) : names.length === 1 ? "looks" : "look";
    const off = wanted === null ? AGAINST_OTHERS[way] : OFF[way];
    return names.length === read && wanted !== null ? `${who} ${verb} ${off} for ${wanted}.` : `${who} ${verb} ${off}.`;
  },
  others: (sides: number, wanted: string | null) =>
    sides === 1 ? `The other one matches ${wanted ?? "the rest"}.` : `The other ${inWords(sides)} match ${wanted ?? "each other"}.`,
  othersOff: (sides: number, way: "tooDull" | "tooSmooth", wanted: string | null) => {
    const who = sides === 1 ? "The other one" : `The other ${inWords(sides)}`;
    if (wanted === null) return `${who} ${are(sides)} ${AGAINST_OTHERS[way]} than the reference ball.`;
    return `${who} ${sides === 1 ? "is" : "match each other, but are"} ${OFF[way]} for ${wanted}.`;
  },
  readAgain: "Read it once more to be sure.",
  redoHow: (place: string, abrasive: string, seconds: number) => `Redo ${place} with ${abrasive}, about ${seconds} seconds.`,
  saved: (sides: number, of: number) => `Saved, ${sides} of ${of} sides.`,
  waits: (sides: number, of: number) => `${sides} of ${of} sides, waiting to be sent.`,
  redo: "Redo this side",
  redoing: "Found off when it was measured",
  keepAsIs: "Keep as is",
  keepWhy: "Why is it good enough?",
  keepIt: "Keep it",
  cancel: "Cancel",
  keptAsIs: (why: string) => `Kept as is: ${why}`,
  undo: (place: string) => `Undo ${place}`,
  reading: (ball: string, place: string) => `${ball}: reading, ${place}`,

  earlier: "Readings of this ball",
  earlierCount: (count: number) => `Readings of this ball (${count})`,
  noEarlier: "Nothing was measured on this ball yet.",
  columns: { at: "when", work: "work", place: "where", reading: "reading", how: "how" },
} as const;

/** Beside a spot on the picture. */
export const PLACE_LABELS: Readonly<Record<Place, string>> = { ...SIDE_LABELS, [TRACK]: "track", [OFF_TRACK]: "off track" };

/** Where a reading was taken: a side of the ball by its name, anything else as it was written down. */
export function placeText(place: string): string {
  return place in SIDE_NAMES ? SIDE_NAMES[place as SideId] : place;
}
