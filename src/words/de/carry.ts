import type { Change, Explanation, LeaveMeaning } from "#engine/pins/explain";
import type { PinsLeft } from "#engine/planning/plan";
import type * as en from "../en/carry.ts";
import type { Translated } from "../translated.ts";
import { boards, degrees, fixed } from "./figures.ts";

export const CARRY = {
  chartTitle: "Strikes danach, wo und wie steil der Ball kommt",
  chartNote: "Linien: Strikes von 100 · Punkte: wo die Würfe dieses Spielers ankommen",
  chartDescription: (best, hits) =>
    `Chance auf einen Strike über Board und Eintrittswinkel an den Pins, als Höhenlinien. ${best} ${hits === 0 ? "" : `${hits} Würfe des Spielers sind als Punkte gezeichnet.`}`,
  bestHit: (inHundred, board, entryDeg) =>
    `Am besten: ${fixed(inHundred, 0)} von 100 auf Board ${fixed(board, 1)} bei ${degrees(entryDeg)}.`,
  boardAxis: (side) => `Board an den Pins, von ${side === "right" ? "rechts" : "links"} gezählt`,
  entryAxis: "Eintrittswinkel, Grad",
  high: "hoch",
  light: "dünn",
  leavesTitle: "Was stehen bleibt",
  leavesDescription: (rows) => `Was am ehesten stehen bleibt, Pins von oben gesehen. ${rows.join(" ")}`,
  leaveRow: (leave, inHundred) => `${leave}: ${fixed(inHundred, 1)} von 100.`,
  share: (inHundred) => (inHundred < 0.95 ? fixed(inHundred, 1) : fixed(inHundred, 0)),
  strike: "Strike",
  other: "andere",
  hit: (board, entryDeg) => `Board ${fixed(board, 1)} bei ${degrees(entryDeg)}`,
  chance: (value, low, high) => `bringt ${fixed(100 * value, 0)} Strikes von 100 (${fixed(100 * low, 0)} bis ${fixed(100 * high, 0)})`,
  pinsDown: (pins) => `${fixed(pins, 1)} Pins mit dem ersten Ball`,
  scattered: (spreadBoards, entryDeg) => `gestreut um ${boards(spreadBoards)} und ${degrees(entryDeg)}`,
  beyond:
    "Geschwindigkeit oder Gewicht liegt außerhalb dessen, was simuliert wurde (11 bis 20 mph, 12 bis 16 lb): Das Nächste wird genommen.",
  explained: (seen) => `Was die ${fixed(seen, 0)} gesehenen Bälle erklärt`,
  leaves: "stehen, von 100",
  simulated: (runs) =>
    `Aus ${runs.toLocaleString("de-DE")} simulierten Aufstellungen, angepasst an das, was über das Fallen der Pins veröffentlicht ist. Die Höhe ist um die genannte Spanne unsicher; keine zwei Häuser haben gleiche Pins.`,
} as const satisfies Translated<typeof en.CARRY>;

export function pinsText(finish: string, { strike, pinsDown, leaves }: PinsLeft): string {
  const likely = leaves.slice(0, 5).map(({ leave, share }) => `${leave} (${CARRY.share(100 * share)})`);
  const left = likely.length === 0 ? "" : `; am öftesten bleiben stehen, von 100: ${likely.join(", ")}`;
  return `${finish}: ${fixed(100 * strike, 0)} Strikes von 100, ${CARRY.pinsDown(pinsDown)}${left}.`;
}

export const LEAVES_IN_WORDS = 4;

const SIDE_WORDS: Readonly<Record<Explanation["lies"], string>> = {
  light: "Der Ball kommt dünn",
  high: "Der Ball kommt hoch",
  there: "Der Ball kommt, wo er soll",
};

const CHANGE_WORDS: Readonly<Record<Change["change"], string>> = {
  boardHigher: "Ein Board höher",
  boardLighter: "Ein Board dünner",
  steeper: "Ein Grad steiler",
  flatter: "Ein Grad flacher",
};

const CHANGE_ADVICE: Readonly<Record<Change["change"], string>> = {
  boardHigher: "Füße und Ziel ein wenig nach außen, oder den Ball früher haken lassen",
  boardLighter: "Füße und Ziel ein wenig zur Mitte, oder den Ball später haken lassen",
  steeper: "ein späterer, schärferer Haken: eine glattere Oberfläche, wenn der Ball nicht mehr rutscht, oder mehr Winkel über die Bahn",
  flatter: "ein früherer, sanfterer Haken: eine mattere Oberfläche, oder weniger Winkel über die Bahn",
};

export function liesText({ lies, sure }: Explanation): string {
  return `${SIDE_WORDS[lies]} (${fixed(100 * sure, 0)} von 100).`;
}

export function explainedText({ board, entryDeg, strike }: Explanation): string {
  return `Sein mittlerer Treffer: Board ${fixed(board.value, 1)} (${fixed(board.low, 1)} bis ${fixed(board.high, 1)}) bei ${degrees(entryDeg.value)} (${fixed(entryDeg.low, 1)} bis ${fixed(entryDeg.high, 1)}); so geworfen bringt er ${fixed(100 * strike.value, 0)} Strikes von 100 (${fixed(100 * strike.low, 0)} bis ${fixed(100 * strike.high, 0)}).`;
}

const WORTH_A_CHANGE = 0.02;

export function changesText(changes: readonly Change[]): readonly string[] {
  const worth = changes.filter(({ gain }) => gain >= WORTH_A_CHANGE);
  if (worth.length === 0) return ["Keine Änderung des Treffers bringt zwei Strikes von hundert: Was bleibt, ist der Zufall der Pins."];
  return worth.map(({ change, gain }) => `${CHANGE_WORDS[change]} bringt ${fixed(100 * gain, 0)} von 100: ${CHANGE_ADVICE[change]}.`);
}

const LEAVE_WORDS: Readonly<Record<string, string>> = {
  "10": "Eckpin",
  "7": "Eckpin der anderen Seite",
  "2-4-5-8": "Eimer",
  "3-5-6-9": "Eimer",
  "7-10": "beide Eckpins",
  "4-6-7-10": "die großen Vier",
  "4-6-7-9-10": "griechische Kirche",
  "3-10": "kleiner Split",
  "2-7": "kleiner Split",
  "5-7": "Split hinter dem Kopfpin",
  "8-10": "Split in der hinteren Reihe",
};

const NOTABLE_BOARDS = 0.5;
const NOTABLE_DEGREES = 0.6;

export function leaveMeaningText(leave: string, meaning: LeaveMeaning | null): string {
  const named = LEAVE_WORDS[leave] === undefined ? leave : `${leave}, ${LEAVE_WORDS[leave]}`;
  if (meaning === null) return named;
  const { boardsHigh, degreesSteep } = meaning;
  const words = [
    ...(boardsHigh > NOTABLE_BOARDS ? ["hoch"] : boardsHigh < -NOTABLE_BOARDS ? ["dünn"] : []),
    ...(degreesSteep > NOTABLE_DEGREES ? ["steil"] : degreesSteep < -NOTABLE_DEGREES ? ["flach"] : []),
  ];
  return words.length === 0 ? `${named}: bleibt auch bei guten Treffern` : `${named}: kommt ${words.join(" und ")}`;
}
