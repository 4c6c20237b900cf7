import type * as en from "../../en/rooms/ball.ts";
import type { Translated } from "../../translated.ts";
import { fixed } from "../figures.ts";

export const BALL_LOG = {
  owner: "Besitzer",
  nobody: "gehört niemandem",
  hands: "Er wechselt den Besitzer",
  handsTo: "An wen",
  handsHelp: "Ein Name oder eine Telefonnummer. Wer neu ist, wird zuerst mit einem Besuch aufgenommen.",
  noBowler: "Kein Spieler mit diesem Namen oder dieser Nummer.",
  nowOf: (name) => `Er gehört jetzt ${name}`,
  nowNobodys: "Er gehört jetzt niemandem",
  until: (day) => `bis ${day}`,
  finish: "Schliff",
  unknown: "nicht bekannt",
  sinceWork: "Spiele seit der Arbeit an der Oberfläche",
  addGames: "Gespielte Spiele seit dem letzten Eintrag",
  keepGames: "Spiele eintragen",
  gamesAllowed: "eine ganze Zahl von 1 bis 10000",
  scuffed: "Der Besitzer hat daran gearbeitet",
  machine: "Ein Münzautomat hat ihn gereinigt",
  log: "Was mit ihm geschah",
  emptyLog: "Von diesem Ball ist noch nichts aufgeschrieben.",
  fade: "Wie der Schliff nachlässt",
  fadeUnknown: "Was auf dem Ball ist, ist nicht bekannt, darum ist das Nachlassen nicht gezeichnet.",
  refresh: "nächste Auffrischung",
  extraction: "Ölentzug",
  resurfacing: "Neuaufbau der Oberfläche",
  due: (what, value, low, high) => {
    if (value === null) return `${what}: nicht abzusehen`;
    if (value === 0) return `${what}: jetzt fällig`;
    return `${what}: in etwa ${fixed(value, 0)} Spielen${low === null || high === null ? "" : ` (${fixed(low, 0)} bis ${fixed(high, 0)})`}`;
  },
  lastHere: (what, day, games) => `${what}: hier zuletzt am ${day}, vor ${gamesText(games, "Spielen")}`,
  neverHere: (what, games) => `${what}: nicht in diesen Aufzeichnungen, darum über alle ${games} aufgeschriebenen Spiele gezählt`,
  ends: "Was ihn beenden wird",
  endsNow: (what) => `Daran gefunden: ${what}. Kein Drehgerät, keine Wärme, bis jemand nachgesehen und gesagt hat, was es ist.`,
  endNames: { diameter: "fiele der Durchmesser unter die Grenze", serial: "wäre die Seriennummer abgeschliffen" },
  endsAfter: (what, times) =>
    times < 1
      ? `Mit der nächsten solchen Arbeit ${what}.`
      : `Immer wieder auf den heutigen Schliff gebracht, ${what} nach etwa ${times} Malen.`,
  endsWhy:
    "Aus dem, was die Schleifmittel abtragen: angenommen, nicht gemessen; sehen Sie die Nummer an und messen Sie den Ball. Auch Hitze, Stöße und Jahre beenden einen Ball.",
  limits: "Grenzen",
  book: "Regelbuch",
  limitsFrom: "Gewicht, RG und Differential, wie sie hier aufgeschrieben sind, wenn sie nicht gemessen wurden.",
  writeDown: "Aufschreiben",
  about: "Über diesen Ball",
  states: { "in use": "im Gebrauch", resting: "ruht", stopped: "angehalten", retired: "ausgemustert", "left the shop": "nicht mehr hier" },
  fields: {
    name: "Name",
    serial: "Seriennummer",
    cover: "Schale",
    job: "Aufgabe",
    state: "Was er tut",
    boxFinish: "Schliff beim Verkauf",
    "core.massLb": "Gewicht, lb",
    "core.diameterIn": "Durchmesser, in",
    "core.rgIn": "RG, in",
    "core.differentialIn": "Differential, in",
    "core.intermediateDifferentialIn": "Zwischendifferential, in",
    "layout.pinToPapIn": "Pin zum PAP, in",
    "layout.drillingAngleDeg": "Bohrwinkel, °",
    "layout.valAngleDeg": "VAL-Winkel, °",
    heatLimitF: "Wärmegrenze des Herstellers, °F",
    purchasedOn: "Gekauft am",
    drilledOn: "Gebohrt am",
    "warranty.until": "Garantie bis",
    "warranty.note": "Garantie",
    notes: "Notizen",
  },
  helps: { boxFinish: "2000 oder 1000 + polish", heatLimitF: "wie der Hersteller sagt; nie über 140" },
  foundOn: "Daran gefunden",
  nothingFound: "Nichts wurde daran gefunden.",
  noLonger: "Nicht mehr da",
  noLongerOf: (what) => `Nicht mehr da: ${what}`,
  takenOff: (what) => `Von der Liste genommen: ${what}.`,
  undo: "Rückgängig",
  addFind: "Etwas wurde gefunden",
  findNote: "Wo, und wie es aussieht",
  keepFind: "Fund aufschreiben",
  finds: {
    crack: "Riss",
    "hollow sound": "klingt hohl",
    plug: "Stopfen",
    "flat spot": "Flachstelle",
    "track wear": "abgenutzte Laufspur",
    other: "etwas anderes",
  },
  ways: { spinner: "Drehgerät", "hand, wet": "von Hand, nass", "hand, dry": "von Hand, trocken", machine: "Automat" },
  stageWays: {
    "spinner, wet": "auf dem Drehgerät, nass",
    "spinner, dry": "auf dem Drehgerät, trocken",
    "hand, wet": "von Hand, nass",
    "hand, dry": "von Hand, trocken",
  },
  stage: (what, way, initials, note) =>
    `${what}${way === null ? "" : `, ${way}`}: abgezeichnet ${initials}${note === "" ? "" : ` (${note})`}`,
  takenBack: (initials, why) => `Abzeichnung zurückgenommen, ${initials}${why === "" ? "" : ` (${why})`}`,
  surface: (who, finish, way, note) =>
    `${WHO[who] ?? who}${finish === null ? "" : `: ${finish}`}${way === null ? "" : `, ${way}`}${note === "" ? "" : ` (${note})`}`,
  photo: (what, note) => `Foto: ${what}${note === "" ? "" : ` (${note})`}`,
  games: (count) => gamesText(count, "Spiele"),
  gamesTold: {
    "a few": "ein paar Spiele seit der letzten Arbeit, wie gesagt",
    "a season": "eine Saison Spiele seit der letzten Arbeit, wie gesagt",
  },
  found: (what, note) => `gefunden: ${what}${note === "" ? "" : ` (${note})`}`,
  reading: (when, place, value) => `${when}, ${place}: ${value}`,
  ticket: (finish, state) => `Auftrag${finish === null ? "" : ` zu ${finish}`}, ${state}`,
} as const satisfies Translated<typeof en.BALL_LOG>;

function gamesText(count: number, several: string): string {
  return count === 1 ? "1 Spiel" : `${count} ${several}`;
}

const WHO: Readonly<Record<string, string>> = {
  shop: "in der Werkstatt bearbeitet",
  owner: "vom Besitzer bearbeitet",
  "coin machine": "vom Münzautomaten gereinigt",
  maker: "wie der Hersteller ihn verkauft hat",
  "somebody else": "anderswo bearbeitet",
};
