import type * as en from "../../en/rooms/bench.ts";
import type { Translated } from "../../translated.ts";
import { SIDE_NAMES } from "../padWork.ts";

export const BENCH = {
  title: "Arbeitsführer",
  leave: "Den Führer verlassen",
  step: (at, of) => `Schritt ${at} von ${of}`,
  ball: "Ball",
  wet: "nass, viel Wasser",
  dry: "trocken",
  force: { light: "leicht drücken", medium: "gleichmäßig drücken", hard: "fest drücken" },
  side: (at, of) => `Seite ${at} von ${of}`,
  sideTitle: (side) => `Die Seite, die bearbeitet wird: ${SIDE_NAMES[side]}`,
  sideDescription: (side) =>
    `Der Ball liegt mit dieser Seite nach oben: ${SIDE_NAMES[side]}. Der Ring zeigt, wohin das Pad kommt; verdeckte Löcher sind gepunktet.`,
  seconds: (left) => `noch ${left} Sekunden`,
  start: "Diese Seite beginnen",
  goOn: "Weiter",
  hold: "Anhalten",
  nextSide: "Nächste Seite",
  turn: "Drehgerät anhalten, Ball drehen.",
  sideAgain: "Diese Seite noch einmal",
  sign: (initials) => `Getan: ${initials} zeichnet ab`,
  signing: "Wird aufbewahrt …",
  cannotUndo: "Schleifen lässt sich nicht rückgängig machen: abzeichnen, was getan ist, dann weiter.",
  cautions: "Bevor Sie beginnen",
  seen: "Gesehen",
  stopped: "Die Arbeit an diesem Ball ist angehalten",
  scan: "Etikett einlesen oder das Ende der Seriennummer tippen",
  scanWhy: "Damit der richtige Ball geschliffen wird.",
  scanWrong: "Das ist weder das Etikett noch die Seriennummer dieses Balls.",
  scanSkip: "Nicht lesbar: Ich habe nachgesehen, es ist dieser Ball",
  scanSkipped: "Das Etikett wurde nicht eingelesen.",
  allDone: "Alle Stufen sind abgezeichnet.",
  toReady: "Er ist fertig",
  toDrying: "Er trocknet",
  measure: "Messen",
  toTicket: "Zum Auftrag",
  nothingToDo: "Für diesen Auftrag ist noch keine Arbeit geschrieben.",
  waits: (count) =>
    count === 1
      ? "1 Sache wartet darauf, an die Werkstatt gesendet zu werden."
      : `${count} Sachen warten darauf, an die Werkstatt gesendet zu werden.`,
  noWake: "Der Bildschirm kann dunkel werden: Wach gehalten wird er nur auf diesem Rechner selbst oder über eine sichere Adresse.",
  resumed: "Weiter, wo es war.",
} as const satisfies Translated<typeof en.BENCH>;
