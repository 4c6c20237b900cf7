import type { Entry, Moment, SurfaceAct, SurfaceAnswer } from "#engine/rules/events";
import type { LimitAnswer, NotChecked } from "#engine/rules/limits";
import type { Quantity } from "#engine/rules/measuredBall";
import type { BookId } from "#engine/rules/ruleBooks";
import type * as en from "../en/limits.ts";
import type { Translated } from "../translated.ts";
import { fixed } from "./figures.ts";

export const BOOK_NAMES: Readonly<Record<BookId, string>> = {
  usbc: "USBC Equipment Specifications",
  "world-bowling": "World Bowling (Grenzen der Ausrüstung, angenommen wie bei USBC; aus dem Gedächtnis)",
};

export const QUANTITY_WORDS: Readonly<Record<Quantity, readonly [name: string, unit: string, decimals: number]>> = {
  massLb: ["Masse", "lb", 2],
  diameterIn: ["Durchmesser", "in", 3],
  circumferenceIn: ["Umfang", "in", 3],
  roundnessIn: ["Unrundheit", "in", 3],
  rgIn: ["Trägheitsradius", "in", 3],
  differentialIn: ["Gesamtdifferential", "in", 3],
  intermediateOverTotalIn: ["Zwischen- weniger Gesamtdifferential", "in", 3],
  friction: ["Reibung auf der Bahn", "", 3],
  hardnessD: ["Härte", "D", 1],
  meanRaMicroinch: ["Rauheit, Mittel der Messungen", "µin", 1],
  highestRaMicroinch: ["Rauheit, höchste Messung", "µin", 1],
  oilAbsorptionMinutes: ["Ölaufnahme", "min", 2],
  topBottomOz: ["Ausgleich oben/unten", "oz", 2],
  sideOz: ["Ausgleich seitlich", "oz", 2],
  fingerThumbOz: ["Ausgleich Finger/Daumen", "oz", 2],
  balanceHoles: ["Ausgleichslöcher", "", 0],
  gripHoles: ["Grifflöcher", "", 0],
  unusedGripHoles: ["nicht benutzte Grifflöcher", "", 0],
  unevenSurface: ["anders bearbeiteter Teil der Oberfläche", "", 0],
};

const TOPIC_WORDS: Readonly<Record<string, string>> = {
  hardnessMade: "Härte, Bälle ab August 2022",
  hardnessSlow: "Härte, langsame Ölaufnahme",
};

export function limitName({ topic, quantity }: LimitAnswer): string {
  return TOPIC_WORDS[topic] ?? QUANTITY_WORDS[quantity][0];
}

export function figureOf(value: number, quantity: Quantity): string {
  const [, unit, decimals] = QUANTITY_WORDS[quantity];
  return `${fixed(value, decimals)}${unit === "" ? "" : ` ${unit}`}`;
}

export function allowedText({ least, most, quantity }: LimitAnswer): string {
  const [, unit, decimals] = QUANTITY_WORDS[quantity];
  const behind = unit === "" ? "" : ` ${unit}`;
  if (least !== null && most !== null) return `${fixed(least, decimals)} bis ${fixed(most, decimals)}${behind}`;
  if (least !== null) return `mindestens ${fixed(least, decimals)}${behind}`;
  return most === null ? "" : `höchstens ${fixed(most, decimals)}${behind}`;
}

const FIELD_WORDS: Readonly<Record<string, string>> = {
  massLb: "die Masse",
  balanceHoles: "ob es ein Ausgleichsloch gibt",
  approvedOn: "den Tag der Zulassung",
  madeOn: "den Tag der Herstellung",
  oilAbsorptionMinutes: "die Ölaufnahme",
  highPerformanceCore: "ob der Kern als Hochleistungskern gilt",
};

export function whyNotChecked({ reason, needs }: LimitAnswer): string {
  const words: Readonly<Record<NotChecked, string>> = {
    notMeasured: "nicht gemessen",
    needs: `braucht ${needs.map((field) => FIELD_WORDS[field] ?? field).join(" und ")}`,
    noRecord: "keine Regel dieses Tages ist hier bekannt",
    temperature: "die Härte bei 21–25 °C ablesen und sagen, bei wie viel",
  };
  return reason === null ? "" : words[reason];
}

export const LIMITS = {
  within: "Innerhalb der gemessenen Grenzen",
  outside: "Außerhalb",
  warning: "Noch einmal ansehen (eine Warnung, keine Grenze)",
  notChecked: "Nicht geprüft",
  everything: "von dem, was hier bekannt ist, blieb nichts ungeprüft",
  nothing: "Nichts wurde gemessen, wovon eine Grenze spricht",
  heading: (book, on) => `${book}, am ${on}`,
  columns: { what: "was", value: "gemessen", allowed: "erlaubt", margin: "Abstand", source: "Quelle" },
  verdicts: { within: "", outside: "AUSSERHALB", warning: "Warnung", notChecked: "" },
  source: (source, mark) => `${source} (${mark})`,
  roughness:
    "Die Grenzen der Rauheit binden den Hersteller, nicht den Besitzer: Darüber wird gewarnt, und die Veranstaltung kann eigene haben.",
  surface: "Was mit der Oberfläche getan werden darf",
  entry: "Die Listen der Veranstaltung",
  check: "Immer das geltende Regelbuch und die Regeln der Veranstaltung ansehen; eine befähigte Person entscheidet.",
} as const satisfies Translated<typeof en.LIMITS>;

export const ACT_WORDS: Readonly<Record<SurfaceAct, string>> = {
  abrasive: "Schleifmittel",
  liquid: "flüssiger Reiniger",
  isopropyl: "Isopropylalkohol",
  dryTowel: "trockenes Tuch",
};

export const MOMENT_WORDS: Readonly<Record<Moment, string>> = {
  before: "vorher",
  practice: "beim Einwerfen",
  scoring: "während gezählt wird",
  betweenGames: "zwischen Spielen",
  betweenSquads: "zwischen Startgruppen",
};

export const ANSWER_WORDS: Readonly<Record<SurfaceAnswer, string>> = {
  yes: "ja",
  no: "nein",
  listed: "nur gelistete",
  consent: "mit Zustimmung",
  ask: "fragen",
};

export const ENTRY_SENTENCES: Readonly<Record<Entry, string>> = {
  onList: "Der Ball steht auf der Liste der Veranstaltung.",
  notOnList: "Der Ball steht nicht auf der Liste der Veranstaltung.",
  withdrawn: "Der Ball steht auf der Liste der zurückgezogenen Bälle.",
  noList: "Keine Liste erlaubter Bälle wurde eingegeben; nicht geprüft.",
  noName: "Der Ball hat in der Datei keinen Namen, darum wurde in den Listen nicht nachgesehen.",
  tooManyBalls: "Mehr Bälle sind gemeldet, als die Veranstaltung erlaubt.",
  ballsWithin: "Die Zahl der Bälle liegt innerhalb derer der Veranstaltung.",
  ballsNotCounted: "Die Zahl der gemeldeten Bälle ist nicht bekannt; nicht geprüft.",
};
