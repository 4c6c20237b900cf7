import type { SideId } from "#engine/surface/padWork/sides";
import { OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import type * as en from "../../en/rooms/measure.ts";
import type { Translated } from "../../translated.ts";
import { SIDE_LABELS, SIDE_NAMES } from "../padWork.ts";

const COUNTS = ["keine", "eine", "zwei", "drei", "vier", "fünf", "sechs"];
const inWords = (count: number): string => COUNTS[count] ?? String(count);
const first = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} und ${names.at(-1)}`;
const OFF = { tooDull: "zu matt", tooSmooth: "zu glatt", likeReference: "wie der Vergleichsball" } as const;
const AGAINST_OTHERS = { tooDull: "matter", tooSmooth: "glatter", likeReference: "wie der Vergleichsball" } as const;

export const MEASURE = {
  title: "Messen",
  titleOf: (ball) => `${ball} messen`,
  when: { before: "vorher", after: "nachher", between: "zwischen Besuchen" },
  whens: { before: "Vorher", after: "Nachher" },
  how: {
    tester: "Messgerät",
    "reference ball": "Vergleichsball",
    durometer: "Härteprüfer",
    scale: "Waage",
    calliper: "Messschieber",
  },
  ways: { tester: "Messgerät", "reference ball": "Nach Glanz" },
  whenLabel: "Wann",
  howLabel: "Wie",
  chooseBall: "Welcher Ball",
  chooseBallWhy: "Messungen bleiben beim Ball. Suchen Sie ihn oder kommen Sie von seinem Auftrag hierher.",
  toTicket: "Zum Auftrag",
  otherBall: "Anderer Ball",
  afterWork: (abrasive) => `nach ${abrasive}`,
  beforeWork: (track, offTrack) =>
    `vorher: ${[track === null ? null : `Laufspur ${track}`, offTrack === null ? null : `daneben ${offTrack}`].filter((part) => part !== null).join(", ")}`,

  reference: "Vergleichsball",
  unrecordedReference: "einer, der nicht verzeichnet ist",
  comparisons: { duller: "matter", "the same": "gleich", smoother: "glatter" },
  sheenKeys: { duller: "Matter", "the same": "Gleich", smoother: "Glatter" },
  sheenHelp: "Gleiches Licht, gleicher Winkel, trocken und sauber. Mit einer Fingerspitze über beide streichen.",
  eye: "Mit Auge und Fingerspitze: auf etwa eine halbe Körnungsstufe genau.",

  front: "Der Ball, mit dem Griff zu Ihnen",
  back: "Die Rückseite des Balls",
  trackUsual: "Laufspur gezeichnet, wo sie meist liegt: Der PAP des Spielers ist nicht bekannt.",
  track: "Laufspur",
  spot: (place, reading) => `${place}: ${reading}`,
  notRead: "noch nicht gemessen",
  lies: {
    grip: "Griff oben",
    opposite: "Griff unten",
    left: "links vom Griff oben",
    right: "rechts vom Griff oben",
    fingers: "Finger oben",
    thumb: "Daumen oben",
    track: "wo der Ball rollt",
    "off track": "wo er die Bahn nie berührt",
  },
  sideOf: (at, of) => `Seite ${at} von ${of}`,
  readingOf: (place, unit) => `${first(place)}, ${unit}`,
  mean: (figure, unit) => `Mittel ${figure} ${unit}`,
  oneMore: "noch eine",
  clearLast: "Letztes Zeichen löschen",
  next: "Nächste Seite",
  saveIt: "Sichern",
  already: (reading) => `Hier gesichert: ${reading}`,
  takeBack: "Zurücknehmen",
  also: "Auch:",
  alsoPlaces: { track: "in der Laufspur", "off track": "neben der Laufspur" },
  openFile: "Datei eines Messgeräts öffnen",
  notANumber: (written, most) => `„${written}“ kann keine Messung sein. Erlaubt: Zahlen über 0, bis ${most}.`,

  line: "Die Messungen auf einer Linie",
  lineOf: (readings) => `Mittel jeder Stelle, von glatt nach matt: ${readings}.`,
  beforeAfter: "Vorher und nachher",
  beforeAfterColumns: { place: "Stelle", before: "vorher", after: "nachher" },

  verdict: "Passen die Seiten zusammen?",
  needMore: (sides) => `Noch ${inWords(sides)} ${sides === 1 ? "Seite" : "Seiten"}, dann lässt es sich sagen.`,
  match: (sides, of, wanted) => {
    const whole = sides === of ? `Alle ${inWords(of)}` : `Die ${inWords(sides)} bisher gemessenen`;
    return `${whole} passen ${wanted === null ? "zueinander" : `zu ${wanted}`}.`;
  },
  cannotTell: (wanted) =>
    `Nahe ${wanted === null ? "beieinander" : `an ${wanted}`}, aber zu wenige Messungen, um sicher zu sein. Auf jeder Seite noch eine.`,
  off: ({ names, way, isSure, wanted, read, of }) => {
    const whole = read === of ? `Alle ${inWords(of)}` : `Die ${inWords(read)} bisher gemessenen`;
    const who = names.length === read && read > 2 ? whole : first(listed(names));
    const verb = isSure ? (names.length === 1 ? "ist" : "sind") : names.length === 1 ? "wirkt" : "wirken";
    const off = wanted === null ? AGAINST_OTHERS[way] : OFF[way];
    return names.length === read && wanted !== null ? `${who} ${verb} ${off} für ${wanted}.` : `${who} ${verb} ${off}.`;
  },
  others: (sides, wanted) =>
    sides === 1
      ? `Die andere passt ${wanted === null ? "zum Rest" : `zu ${wanted}`}.`
      : `Die anderen ${inWords(sides)} passen ${wanted === null ? "zueinander" : `zu ${wanted}`}.`,
  othersOff: (sides, way, wanted) => {
    const who = sides === 1 ? "Die andere ist" : `Die anderen ${inWords(sides)} sind`;
    if (wanted === null) return `${who} ${AGAINST_OTHERS[way]} als der Vergleichsball.`;
    return sides === 1
      ? `${who} ${OFF[way]} für ${wanted}.`
      : `Die anderen ${inWords(sides)} passen zueinander, sind aber ${OFF[way]} für ${wanted}.`;
  },
  readAgain: "Zur Sicherheit noch einmal messen.",
  redoHow: (place, abrasive, seconds) => `${first(place)} noch einmal mit ${abrasive}, etwa ${seconds} Sekunden.`,
  saved: (sides, of) => `Gesichert, ${sides} von ${of} Seiten.`,
  waits: (sides, of) => `${sides} von ${of} Seiten, warten auf das Senden.`,
  redo: "Diese Seite noch einmal",
  redoing: "Beim Messen als abweichend gefunden",
  keepAsIs: "So lassen",
  keepWhy: "Warum ist es gut genug?",
  keepIt: "So lassen",
  cancel: "Abbrechen",
  keptAsIs: (why) => `So gelassen: ${why}`,
  undo: (place) => `${first(place)} rückgängig`,
  reading: (ball, place) => `${ball}: Messung, ${place}`,

  earlier: "Messungen dieses Balls",
  earlierCount: (count) => `Messungen dieses Balls (${count})`,
  noEarlier: "An diesem Ball wurde noch nichts gemessen.",
  columns: { at: "wann", work: "Arbeit", place: "wo", reading: "Messung", how: "wie" },
} as const satisfies Translated<typeof en.MEASURE>;

export const PLACE_LABELS: Readonly<Record<Place, string>> = { ...SIDE_LABELS, [TRACK]: "Laufspur", [OFF_TRACK]: "daneben" };

export function placeText(place: string): string {
  return place in SIDE_NAMES ? SIDE_NAMES[place as SideId] : (PLACES[place] ?? place);
}

const PLACES: Readonly<Record<string, string>> = { [TRACK]: "Laufspur", [OFF_TRACK]: "neben der Laufspur" };
