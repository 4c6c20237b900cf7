import type * as en from "../../en/rooms/ballInSpace.ts";
import type { Translated } from "../../translated.ts";
import { SIDE_NAMES } from "../padWork.ts";

export const BALL_IN_SPACE = {
  title: "Der Ball",
  picture: "Der Ball im Raum: Seiten, Löcher, Achse, Laufspur und die abgezeichnete Padarbeit",
  turnBy: "Ball drehen: mit einem Finger, mit diesen Knöpfen oder mit den Pfeiltasten",
  turns: { left: "Nach links drehen", right: "Nach rechts drehen", up: "Nach oben drehen", down: "Nach unten drehen" },
  face: "Ansehen",
  faceOf: (side) => `Die Seite ${SIDE_NAMES[side]} ansehen`,
  pap: "PAP",
  pin: "Pin",
  massBias: "Mass Bias",
  noPap: "Der PAP des Spielers ist nicht bekannt, darum sind Achse, Laufspur und Layout nicht gezeichnet.",
  noPin: "Das Layout ist nicht bekannt, darum ist der Pin nicht gezeichnet.",
  noDrillingAngle: "Der Bohrwinkel ist nicht bekannt, darum ist der Mass Bias nicht gezeichnet.",
  massBiasIs: (deg) => `Bohrwinkel ${deg}°: am Pin, von der Linie zum PAP zur Linie zum Mass Bias.`,
  trackIs: "Laufspur: aus PAP und Achsneigung berechnet, vor jedem Flare.",
  work: (day) => `Körner: die auf dem Auftrag vom ${day} abgezeichnete Padarbeit, dichter, wo das Pad mehr gearbeitet hat.`,
  noWork: "Noch keine Padarbeit ist abgezeichnet, darum sind keine Körner gezeichnet.",
  columns: { side: "Seite", seconds: "Sekunden", reading: "letzte Messung" },
} as const satisfies Translated<typeof en.BALL_IN_SPACE>;
