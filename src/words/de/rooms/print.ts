import type * as en from "../../en/rooms/print.ts";
import type { Translated } from "../../translated.ts";

export const PRINT = {
  ticket: "Auftrag",
  label: "Etikett",
  visit: "Papiere des Besuchs",
  slip: "Abholschein",
  slipStopped: "keine Arbeit: zuerst fragen",
  leftOn: (day) => `Bei uns gelassen am ${day}`,
  bringSlip: "Bringen Sie diesen Schein mit, oder einfach Ihren Namen.",
  care: "Pflegekarte",
  measures: "Messblatt",
  measured: (when) => `Gemessen am ${when}`,
  noMeasures: "Für diesen Auftrag wurde nichts gemessen.",
  columns: {
    place: "wo",
    before: (unit) => `vorher, ${unit}`,
    after: (unit) => `nachher, ${unit}`,
    soFar: (unit) => `bisher, ${unit}`,
    how: "womit",
  },
  several: (mean, count, low, high) => `${mean} (${count} gelesen: ${low} bis ${high})`,
  workedSince: (count) =>
    count === 1
      ? "Eine Messung fehlt hier: Ihre Seite wurde seither noch einmal bearbeitet."
      : `${count} Messungen fehlen hier: Ihre Seiten wurden seither noch einmal bearbeitet.`,
  agreement: { before: "Vor der Arbeit", after: "Nach der Arbeit", soFar: "Bisher, noch in Arbeit" },
  eye: "Mit Auge und Fingerspitze verglichen: Mehr als eine halbe Stufe der Leiter zeigen sie kaum.",
  signed: "Gemessen von",
  toBeDone: "Zu tun.",
  inWork: (done, of) => `In Arbeit: ${done} von ${of} Schritten abgezeichnet.`,
  isDone: "Getan: Jeder Schritt ist abgezeichnet.",
  isMeasured: (verdict) => `Gemessen: ${verdict}`,
  notKnown: "nicht bekannt",
  mph: (mph) => `${mph} mph`,
  rpm: (rpm) => `${rpm} U/min`,
  notMeasured: "Nach der Arbeit nicht gemessen.",
  back: "Zurück zum Auftrag",
  print: "Drucken",
  cautions: "An der Werkbank",
} as const satisfies Translated<typeof en.PRINT>;
