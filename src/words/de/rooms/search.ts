import type * as en from "../../en/rooms/search.ts";
import type { Translated } from "../../translated.ts";

export const SEARCH = {
  open: "Suchen",
  openKey: "Suchen ( / )",
  title: "In der Werkstatt suchen",
  words: "Name, Seriennummer oder Telefon",
  help: "Bälle, Spieler und offene Aufträge. Esc schließt.",
  none: "Nichts mit diesem Namen oder dieser Nummer.",
  balls: "Bälle",
  bowlers: "Spieler",
  tickets: "Aufträge",
  close: "Schließen",
} as const satisfies Translated<typeof en.SEARCH>;
