import type * as en from "../../en/rooms/laneSide.ts";
import type { Translated } from "../../translated.ts";

export const LANE_SIDE = {
  title: "An der Bahn",
  which: "Welcher Ball",
  notFound: "Nicht verzeichnet, oder kein Netz",
  name: "Wie der Ball heißt",
  serial: "Seriennummer, wenn lesbar",
  takeIt: "Diesen bearbeiten",
  other: "Anderer Ball",
  nowOn: (finish) => (finish === null ? "was jetzt darauf ist, ist nicht bekannt" : `jetzt ${finish}`),
  stopped: "Die Arbeit an diesem Ball ist angehalten: Ein Riss oder ein hohler Klang wurde gefunden. Nicht schleifen; zur Theke bringen.",
  number: "Welche Nummer",
  how: "Von Hand",
  ways: { "hand, dry": "trocken", "hand, wet": "nass" },
  afterwards: "Danach",
  ends: { "handed back": "zurückgegeben", "stays in the shop": "bleibt in der Werkstatt" },
  before: "Bevor Sie beginnen",
  allSides: "Alle sechs Seiten, gleich lange, bis der ganze Ball gleich aussieht.",
  done: (initials) => `Getan: ${initials} zeichnet ab`,
  cannotUndo: "Schleifen lässt sich nicht rückgängig machen: abzeichnen, wenn es getan ist.",
  signed: (ball, finish, way) => `${ball}: ${finish}, ${way === "hand, wet" ? "von Hand, nass" : "von Hand, trocken"}.`,
  isKept: "Abgezeichnet und aufbewahrt.",
  isWaiting: "Abgezeichnet. Die Werkstatt ist nicht zu erreichen; es wird gesendet, sobald es geht.",
  isRefused: "Abgezeichnet, aber die Werkstatt hat es nicht angenommen; warum, steht oben.",
  next: "Nächster Ball",
} as const satisfies Translated<typeof en.LANE_SIDE>;
