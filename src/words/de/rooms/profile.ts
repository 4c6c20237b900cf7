import type * as en from "../../en/rooms/profile.ts";
import type { Translated } from "../../translated.ts";
import { fixed } from "../figures.ts";

export const PROFILE_FILES = {
  title: "Profildateien",
  what: "CSV oder Text mit zwei Spalten, X3P (ISO 25178-72), SMD (ISO 5436-2)",
  choose: "Datei eines Messgeräts öffnen",
  form: "Herausgenommene Krümmung",
  forms: { arc: "die Krümmung des Balls", line: "eine Neigung", none: "nichts" },
  cutoff: "Grenzwellenlänge",
  cutoffUsual: "nach der Tabelle der Norm",
  mm: (value) => `${fixed(value, 2)} mm`,
  working: "Wird gelesen …",
  broken: (why) => `Sie ließ sich nicht lesen: ${why}`,
  place: "Wo gemessen",
  track: "Laufspur",
  keep: "Datei und Messung beim Ball aufbewahren",
  keepFile: "Datei beim Ball aufbewahren",
  keeping: "Wird aufbewahrt …",
  kept: (name) => `${name} ist beim Ball aufbewahrt.`,
  known: "Dateien dieses Balls",
  none: "Bei diesem Ball liegt noch keine Datei.",
  save: (name) => `${name} sichern`,
  lengths: "mm",
  heights: "µm",
} as const satisfies Translated<typeof en.PROFILE_FILES>;
