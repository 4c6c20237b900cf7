import type { SideId } from "#engine/surface/padWork/sides";
import type * as en from "../../en/rooms/measure.ts";
import type { Translated } from "../../translated.ts";
import { fixed } from "../figures.ts";
import { SIDE_NAMES } from "../padWork.ts";

export const MEASURE = {
  title: "Messen",
  titleOf: (ball) => `Messen: ${ball}`,
  when: { before: "vorher", after: "nachher", between: "zwischen Besuchen" },
  how: {
    tester: "Messgerät",
    "reference ball": "Vergleichsball",
    durometer: "Härteprüfer",
    scale: "Waage",
    calliper: "Messschieber",
  },
  ways: { "reference ball": "nach dem Glanz", tester: "mit Messgerät" },
  whenLabel: "Wann",
  howLabel: "Wie",
  chooseBall: "Welcher Ball",
  chooseBallWhy: "Messungen werden beim Ball aufbewahrt. Suchen Sie ihn oder kommen Sie von seinem Auftrag hierher.",
  toTicket: "Zum Auftrag",
  otherBall: "Anderer Ball",

  reference: "Vergleichsball",
  unrecordedReference: "einer, der nicht verzeichnet ist",
  comparisons: { duller: "matter", "the same": "gleich", smoother: "glatter" },
  sheenHelp:
    "Gleiches Licht, gleicher Winkel, trocken und sauber; mit einer Fingerspitze über beide streichen. Eingabe geht zur nächsten Seite.",
  testerHelp: "Eine oder mehrere Messungen je Seite, mit Leerzeichen dazwischen. Eingabe geht zur nächsten Seite.",
  unit: (unit) => `Ra, ${unit}`,
  notANumber: (written, most) => `„${written}“ passt nicht. Erlaubt: Zahlen über 0, höchstens ${most}, mit Leerzeichen dazwischen.`,
  wanted: "Verglichen mit dem Schliff",
  wantedUnknown: "kein Schliff: nur untereinander",

  verdict: "Stimmen die Seiten überein?",
  figures: "Die Seiten in Zahlen",
  noVerdict: "Sobald zwei Seiten eingetragen sind, steht hier, ob sie übereinstimmen.",
  ownMean: (um) => `Alle Seiten: ${fixed(um, 2)} µm wirksam, nur untereinander verglichen.`,
  sheenAlike: (sides, as) => `${sides} Seiten sehen und fühlen sich gleich an: ${as} wie der Vergleichsball.`,
  sheenAlikeOff: (sides, as) => `${sides} Seiten sehen und fühlen sich gleich an: alle ${as} als der Vergleichsball.`,
  sheenApart: "Die Seiten stimmen nicht überein.",
  sheenGroup: (as, sides) => `${as}: ${sides}`,
  sheenBackTo: (sides) => `Zurück zu: ${sides}.`,
  notLooked: (sides) => `Noch nicht angesehen: ${sides}.`,
  eye: "Auge und Fingerspitze, keine Messung: Mehr als eine halbe Stufe der Leiter zeigen sie kaum.",

  keep: (count) => (count === 1 ? "1 Messung aufbewahren" : `${count} Messungen aufbewahren`),
  undo: "Rückgängig",
  kept: (count) => (count === 1 ? "1 Messung ist beim Ball aufbewahrt." : `${count} Messungen sind beim Ball aufbewahrt.`),
  empty: "Felder leeren",
  reading: (ball, side) => `${ball}: Messung, ${side}`,

  earlier: "Messungen dieses Balls",
  noEarlier: "An diesem Ball wurde noch nichts gemessen.",
  columns: { at: "wann", work: "Arbeit", place: "wo", reading: "Messung", how: "wie" },
} as const satisfies Translated<typeof en.MEASURE>;

export function placeText(place: string): string {
  return place in SIDE_NAMES ? SIDE_NAMES[place as SideId] : (PLACES[place] ?? place);
}

const PLACES: Readonly<Record<string, string>> = { track: "Laufspur", "off track": "neben der Laufspur" };
