import type * as en from "../../en/rooms/pieces.ts";
import type { Translated } from "../../translated.ts";

export const EDITING = {
  change: "Ändern",
  keep: "Aufbewahren",
  leave: "Lassen, wie es war",
  empty: "leer",
  quicker: "Jemand anders hat das inzwischen geändert. Nichts ist verloren: Hier ist beides.",
  mine: "was Sie getippt haben",
  theirs: "was jetzt aufbewahrt ist",
  keepMine: "Aufbewahren, was ich getippt habe",
  keepTheirs: "Lassen, was aufbewahrt ist",
} as const satisfies Translated<typeof en.EDITING>;

export const TABLE = {
  showAll: (count) => `Alle ${count} zeigen`,
  csv: "Als CSV sichern",
  asCsv: "Als CSV",
} as const satisfies Translated<typeof en.TABLE>;

export const CHART_FILES = {
  svg: "Als SVG",
  png: "Als PNG",
} as const satisfies Translated<typeof en.CHART_FILES>;
