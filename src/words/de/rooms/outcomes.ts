import type * as en from "../../en/rooms/outcomes.ts";
import type { Translated } from "../../translated.ts";

export const OUTCOME_WORDS: Translated<typeof en.OUTCOME_WORDS> = {
  title: "Was gehalten hat",
  question: "Hat es gewirkt?",
  lastTime: (finish) => `Letztes Mal: ${finish}. Hat es gewirkt?`,
  answers: { "as said": "wie gesagt", partly: "zum Teil", not: "nein" },
  told: (answer, when) => `${answer}, gesagt am ${when}`,
  nothing:
    "Noch hat niemand etwas gesagt. An einem fertigen Auftrag und wenn ein Ball wiederkommt, hält ein Druck fest, was der Spieler sagt.",
  all: "Alle Arbeiten, von denen ein Spieler erzählt hat",
  share: (percent, low, high, of) => `${percent} von 100 haben gehalten (${low} bis ${high}), von ${of}`,
  halves: "„Zum Teil“ zählt halb. In Klammern das 95-%-Intervall: Bei wenigen Antworten ist es weit, und das ist ehrlich.",
  byCover: "Nach Schale",
  cover: "Schale",
  bySymptom: "Nach Klage",
  symptom: "Klage",
  held: "Gehalten",
  of: "Von",
  interval: "Kann sein",
  calibration: "Die genannten Aussichten",
  calibrationWhy:
    "Von Plänen, die sich etwa so sicher nannten, wie viele gehalten haben. Sicher heißt: die Wahl ist so gut wie die beste. Was nicht ganz das Beste ist, kann doch tun, was gesagt wurde; zu scheu ist also eher zu erwarten als zu kühn.",
  said: "Genannt",
  seen: "Gesehen",
  agrees: "Gehalten",
  agreesWords: { yes: "ja", bold: "nein: zu kühn", shy: "nein: zu scheu" },
  between: (from, to) => `${from} bis ${to} von 100`,
  noOdds: "Noch ist kein Plan mit Aussichten darunter.",
  brier: (value) => `Brier-Wert ${value}: 0 ist vollkommen, 0,25 eine Münze.`,
  csv: ["wovon", "gehalten", "von", "Anteil", "ab", "bis"],
  toRoom: "Was gehalten hat",
};
