import type * as en from "../en/problems.ts";
import type { Params } from "../params.ts";
import { fixed } from "./figures.ts";

interface Told {
  readonly value: string;
  readonly allowed: string;
  readonly params: Params;
}

function orMeant(params: Params): string {
  const nearest = params.optionalText("nearest");
  return nearest === null ? "." : `; meinten Sie ${nearest}?`;
}

export const MEASURED_SENTENCES: Readonly<Record<string, string>> = {
  notZip: "Das ist keine X3P-Datei: kein ZIP-Archiv.",
  damaged: "Das Archiv ist beschädigt oder abgeschnitten.",
  tooManyEntries: "Das Archiv hat mehr Einträge als jede X3P-Datei.",
  tooLarge: "Die Datei ist größer, oder entpackt größer, als gelesen wird.",
  noMainXml: "Das Archiv enthält keine main.xml.",
  xml: "main.xml kann nicht gelesen werden.",
  doctype: "main.xml erklärt Dokumenttypen oder Entitäten, die keine X3P-Datei braucht.",
  checksum: "Eine Prüfsumme passt nicht: Die Datei wurde geändert oder beschädigt.",
  layers: "Die Datei enthält mehrere Schichten.",
  size: "Die Zahl der Punkte ist nicht die, die die Datei nennt.",
  axis: "Eine Achse ist nicht so beschrieben, dass sie gelesen werden kann.",
  uneven: "Die Punkte haben keine gleichen Abstände.",
  notANumber: "Eine Höhe ist keine Zahl.",
  height: "Eine Höhe ist größer, als eine Oberfläche sie haben kann.",
  columns: "Die Spalten sind nicht, wo sie sein sollen.",
  unit: "Eine Einheit ist nicht bekannt.",
  records: "Die Datei hat nicht die vier Abschnitte von ISO 5436-2.",
  noPoints: "In der Datei sind keine gemessenen Punkte.",
  kind: "Die Art der Datei ist nicht bekannt.",
};

function whole(count: number): string {
  return count.toLocaleString("de-DE");
}

export const PROBLEM_SENTENCES = {
  notAllowed: ({ value, allowed }) => `${value} ist hier nicht erlaubt. Erlaubt: ${allowed}.`,
  missing: ({ allowed }) => `fehlt. Erlaubt: ${allowed}.`,
  unknownKey: ({ params, allowed }) => `ist hier kein Schlüssel${orMeant(params)} Bekannte Schlüssel: ${allowed}.`,
  wrongVersion: ({ value, params }) =>
    `Version ${value} der Datei ist nicht bekannt; dieses Programm liest Version ${params.number("version")}.`,
  notKnown: ({ value, params, allowed }) => `${value} ist nicht bekannt${orMeant(params)} Erlaubt: ${allowed}.`,
  wordFillsNothing: ({ value }) =>
    `die Zahlen sind schon da, darum hat das Wort ${value} nichts zu sagen. Geben Sie die Zahlen oder das Wort.`,
  onlyOneOf: ({ allowed }) => `braucht ${allowed}.`,
  totalDisagrees: ({ params }) =>
    `das Blatt nennt ${fixed(params.number("statedMl"), 2)} mL, seine Zeilen ergeben ${fixed(params.number("computedMl"), 2)} mL. Eines davon ist vertippt; berichtigen Sie es oder lassen Sie die genannte Menge weg.`,
  notForPlan: ({ allowed }) => `ein Schliffplan braucht Öl auf der Bahn: ${allowed}. Vorgegebene Reibung ist für einzelne Würfe.`,
  noBestLine: ({ allowed }) =>
    `der heutige Schliff hat auf dieser Bahn keine sinnvolle Linie, die zu finden wäre, darum muss eine gegeben werden: ${allowed}.`,
  noFile: ({ value }) => `Es gibt keine Datei ${value}.`,
  isFolder: ({ value }) => `${value} ist ein Ordner; gebraucht wird eine Datei.`,
  noAccess: ({ value }) => `${value} kann nicht gelesen werden: Die Erlaubnis fehlt.`,
  notWritten: ({ value, params }) => `${value} kann nicht geschrieben werden: ${params.text("detail")}.`,
  tooLarge: ({ params }) => `Die Datei hat ${params.number("bytes")} Bytes; eine solche Datei hat höchstens ${params.number("mostBytes")}.`,
  empty: () => "In der Datei steht nichts. Unsere Dateien beginnen mit `gritwright: 1`.",
  notUtf8: () => "Die Datei ist kein Text in UTF-8.",
  workbook: () => "Das ist die eigene Datei einer Tabellenkalkulation. Dort öffnen, „Speichern unter“, CSV wählen, und jene Datei nehmen.",
  notTable: () => "Die Datei ist kein lesbarer Text: weder UTF-8 noch UTF-16 noch Windows-1252. Die Tabelle als CSV (UTF-8) speichern.",
  emptyTable: () => "In der Datei ist keine Tabelle: eine Kopfzeile und mindestens eine Zeile gehören hinein.",
  syntax: ({ params }) => `Zeile ${params.number("line")}, Spalte ${params.number("column")}: ${params.text("detail")}.`,
  duplicateKey: ({ value, params }) => `Zeile ${params.number("line")}: Der Schlüssel ${value} steht hier zum zweiten Mal.`,
  tooManyAliases: () => "Die Datei wiederholt sich durch Verweise (*name) öfter, als eine solche Datei brauchen kann.",
  tooDeep: ({ params }) =>
    `Das ist tiefer als ${params.number("levels")} Ebenen geschachtelt; nichts, was hier gemeint sein kann, ist das.`,
  tooManyKeys: ({ params }) => `hat ${whole(params.number("keys"))} Schlüssel; höchstens ${whole(params.number("most"))} werden gelesen.`,
  tooManyValues: ({ params }) => `Es sind mehr als ${whole(params.number("most"))} Werte darin; mehr werden nicht gelesen.`,
  more: ({ params }) => `und ${whole(params.number("count"))} weitere.`,
  measuredFile: ({ value, allowed, params }) => `${MEASURED_SENTENCES[params.text("what")]} Gefunden: ${value}. Erlaubt: ${allowed}.`,
  usage: ({ params }) => params.text("detail"),
} as const satisfies Record<keyof typeof en.PROBLEM_SENTENCES, (told: Told) => string>;
