import type { BallJob, CoverId } from "#engine/ball/ball";
import type { Hand } from "#engine/delivery/bowler";
import type { PatternId } from "#engine/lane/patterns";
import type * as en from "../en/screens.ts";
import type { Translated } from "../translated.ts";
import { fixed, launchAngle } from "./figures.ts";

export const FRAME = {
  product: "Gritwright",
  motto: "was die Oberfläche eines Balls auf der Bahn tut",
  paper: "Papier",
  bench: "Werkbank, dunkel",
  variant: "Aussehen",
  skip: "Zur Antwort springen",
  notFound: (path) => `Unter ${path} gibt es keinen Raum.`,
  toToday: "Zu Heute",
  failed: "Etwas von uns ist kaputt. Was Sie getippt haben, ist aufbewahrt; laden Sie die Seite neu, um weiterzumachen.",
  loadAgain: "Seite neu laden",
  fileMissing: "eine Datei der Seite konnte nicht geladen werden",
} as const satisfies Translated<typeof en.FRAME>;

export const COVER_WORDS: Readonly<Record<CoverId, string>> = {
  polyester: "Polyester",
  urethane: "Urethan",
  solid: "reaktives Solid",
  hybrid: "reaktives Hybrid",
  pearl: "reaktives Pearl",
};

export const COVER_UNKNOWN: Translated<typeof en.COVER_UNKNOWN> = "Schale nicht bekannt";

export const BALL_JOB_WORDS: Readonly<Record<BallJob, string>> = {
  strike: "Strikeball",
  control: "Kontrollball",
  spare: "Spareball",
  house: "Hausball",
};

export const HAND_WORDS: Readonly<Record<Hand, string>> = { right: "rechts", left: "links" };
export const SPEED_WORD_TEXT = { slow: "langsam", medium: "mittel", fast: "schnell" } as const satisfies Translated<
  typeof en.SPEED_WORD_TEXT
>;
export const HOOK_WORD_TEXT = { little: "ein wenig", medium: "ziemlich", much: "sehr" } as const satisfies Translated<
  typeof en.HOOK_WORD_TEXT
>;

export const ARROW_WORDS = {
  "": "nicht bekannt",
  "1st": "1.",
  "2nd": "2.",
  "3rd": "3.",
  "4th": "4.",
  "farther in": "weiter innen",
} as const satisfies Translated<typeof en.ARROW_WORDS>;

export const PATTERN_WORDS: Readonly<Record<PatternId, string>> = {
  "house-40": "Hausmuster, 40 ft",
  "light-38": "leicht, 38 ft",
  "medium-41": "mittel, 41 ft",
  "heavy-44": "viel und flach, 44 ft",
};

export const PLAN_FORM = {
  title: "Was bekannt ist",
  demonstration: "Ein erfundenes Beispiel. Ändern Sie, was Sie wollen.",
  bowler: "Spieler",
  ball: "Ball",
  lane: "Bahn",
  line: "Heutige Linie",
  limits: "Grenzen und Schliffe zur Wahl",
  delivery: "Der Wurf ist bekannt als",
  numbers: "Zahlen",
  words: "Worte",
  name: "Name",
  hand: "Wirft mit",
  speed: "Abwurfgeschwindigkeit",
  revs: "Drehzahl",
  rotation: "Achsrotation",
  tilt: "Achsneigung",
  speedWord: "Wie schnell",
  plays: "Spielt über welchen Pfeil",
  hookWord: "Wie viel er hakt",
  cover: "Schale",
  job: "Aufgabe des Balls",
  finish: "Heutiger Schliff",
  finishHelp: "2000 oder 1000 + polish",
  ra: "Messung Ra, wenn genommen",
  mass: "Masse",
  rg: "RG",
  differential: "Differential",
  intermediate: "Zwischendifferential",
  pinToPap: "Pin zum PAP",
  core: "Masse und Kern",
  pattern: "Ölmuster",
  patternFromFile: "wie in der geöffneten Datei",
  played: "Schon gespielte Würfe",
  laydown: "Aufsetzboard",
  launch: "Abwurfwinkel, nach außen",
  laydownLeast: "Aufsetzboard, mindestens",
  laydownMost: "Aufsetzboard, höchstens",
  launchLeast: "Abwurfwinkel, mindestens",
  launchMost: "Abwurfwinkel, höchstens",
  breakpointLeast: "Board des Umkehrpunkts, mindestens",
  breakpointMost: "Board des Umkehrpunkts, höchstens",
  candidates: "Schliffe zum Vergleichen",
  candidatesHelp: "Mit Kommas getrennt; leer: was bei dieser Schale üblich ist",
  reason: "Grund für einen unüblichen Schliff",
  lineHelp: "Leer: die beste Linie des heutigen Schliffs",
  taken: (value) => `${value} genommen`,
  allowed: (value, allowed) => (value === "" ? `Hier gebraucht: ${allowed}.` : `„${value}“ passt nicht. Erlaubt: ${allowed}.`),
  drag: (label) => `${label}: ziehen`,
  withUnit: (value, unit) => `${String(value).replace(".", ",")}${unit === "" ? "" : ` ${unit}`}`,
  oilScale: "Öl auf der Bahn",
  percentOfPattern: (share) => `${Math.round(100 * share)} % des Ölmusters`,
  undo: "Rückgängig",
  undoHint: "Nimmt die letzte Änderung zurück",
  startAgain: "Zurück zum Beispiel",
  open: "Auftragsdatei öffnen",
  save: "Auftragsdatei sichern",
  unreadable: "Diese Datei kann nicht gelesen werden; was im Formular stand, bleibt.",
  tooLarge: "Diese Datei ist größer als 2 MB; eine solche Datei hat wenige Kilobytes. Was im Formular stand, bleibt.",
  noMapping: "Sie enthält keine Zuordnung von Feldern.",
  elsewhere: "Nicht im Formular:",
} as const satisfies Translated<typeof en.PLAN_FORM>;

export const PLAN_ANSWER = {
  title: "Schliffplan",
  refused: "Es gibt noch keine neue Antwort: Etwas im Formular passt nicht. Die Antwort unten gilt für das, was vorher dort stand.",
  refusedFirst: "Es gibt noch keine Antwort: Etwas im Formular passt nicht.",
  stopped: "Angehalten. Was bis dahin gefunden wurde, steht unten.",
  failed: (reason) => `Die Rechnung brach ab: ${reason}`,
  stages: {
    sketch: "Erster Blick, nur frische Bahn",
    session: "Über eine Sitzung",
    draws: "Wie sicher: andere Welten durchprobieren",
    done: "Fertig",
  },
  stop: "Anhalten",
  goOn: "Noch einmal rechnen",
  progress: "Fortschritt des Plans",
  takeThis: (finish) => `Nehmen Sie ${finish}.`,
  noPick: "Kein Schliff wird gewählt.",
  plateau: (finishes) =>
    finishes.length < 2 ? "Die anderen liegen dahinter." : `${listed(finishes)}: zu nah beieinander, um zu entscheiden.`,
  cliff: {
    smoother: "Zum Glatten hin fällt es ab: im Zweifel matter.",
    duller: "Zum Matten hin fällt es ab: im Zweifel glatter.",
  },
  sure: { sure: "sicher", likely: "wahrscheinlich", unsure: "unsicher" },
  sureSentence: {
    sure: "Wir sind uns sicher.",
    likely: "Es stimmt wahrscheinlich.",
    unsure: "Wir sind nicht sicher; sehen Sie einem Wurf zu.",
  },
  sureShare: (percent, worlds) => `Mindestens ${percent} von 100 Welten, die zum Bekannten passen, stimmen zu; ${worlds} wurden gerechnet.`,
  notYetSure: "wie sicher, wird noch gerechnet",
  metric: {
    strikeChance: "Strikechance",
    expectedPins: "Pins, erster Ball",
    leastChange: "Strikechance, Linie gehalten",
    leastHook: "Strikechance",
  },
  metricNote: {
    strikeChance: "Die Chance ist die auf einen Strike mit der Streuung dieses Spielers.",
    expectedPins: "Strikes sind hier zu selten, um Schliffe zu unterscheiden; gezählt werden die Pins des ersten Balls.",
    leastChange: "Die Chance ist die auf einen Strike auf einer Linie, die gehalten wird, während sich die Bahn verändert.",
    leastHook: "Ein Räumball soll am wenigsten haken; Strikes zählen nicht.",
  },
  tied: "zu nah beieinander",
  pins: "An den Pins, auf der Bahn, wie sie vorgefunden ist",
  pinsNote:
    "Aus simulierten Pins gerechnet, die an Veröffentlichtes angepasst sind. Die Höhe ist um die Spanne neben jeder Chance unsicher; keine zwei Häuser haben gleiche Pins.",
  chart: "Die Bahn",
  chartFor: (name, pattern) => (name === "" ? pattern : `${name} · ${pattern}`),
  ownLine: "eigene Linie",
  todayName: (finish) => `${finish} · heute`,
  pickName: (finish) => `${finish} · Wahl`,
  otherName: (finish) => `${finish} · eigene Linie`,
  saveCsv: "Tabelle als CSV",
  print: "Drucken",
  loss: "Was ein anderer Schliff kosten würde",
  lossNote: "Das Band ist die Unsicherheit des Unterschieds zur Wahl: Neun von zehn Welten liegen darin.",
  table: "Schliffe nebeneinander, jeder auf seiner eigenen Linie",
  columns: {
    finish: "Schliff",
    onChart: "Auf der Karte",
    compare: "Vergleichen",
    line: "Linie",
    hookAndRoll: "Beginn des Hakens",
    entry: "Eintritt",
    slip: "Schlupf an den Pins",
    speed: "Geschwindigkeit an den Pins",
    chance: "Chance",
    room: "Ein wenig daneben",
    keeps: "Bleibt, wie er ist",
    todaysLine: "Auf der heutigen Linie",
    move: "Umzug",
  },
  today: "heute",
  pick: "Wahl",
  alsoOf: (column, finish) => `${column}: ${finish}`,
  line: (board, deg) => `Board ${fixed(board, 1)}, ${fixed(deg, 1)}°`,
  lineBoard: (board) => `Board ${fixed(board, 1)}`,
  lineAngle: (deg) => launchAngle(deg, 1),
  noLine: "keine sinnvolle Linie",
  unknown: "–",
  feet: (ft) => `${fixed(ft, 1)} ft`,
  degrees: (deg) => `${fixed(deg, 1)}°`,
  slip: (mps) => `${fixed(mps, 2)} m/s`,
  mph: (value) => `${fixed(value, 1)} mph`,
  percent: (share) => `${Math.round(share * 100)} %`,
  rollsAt: (ft) => `rollt ab ${fixed(ft, 1)} ft`,
  neverRolls: "rollt nicht vor den Pins",
  rangeNotKnownYet: "Spanne folgt",
  percentRange: (low, high) => `${Math.round(low * 100)} bis ${Math.round(high * 100)} %`,
  games: (games) => (games >= 200 ? "über 200 Spiele" : `${fixed(games, 0)} Spiele`),
  gamesRange: (low, high) => `${fixed(low, 0)} bis ${high >= 200 ? "über 200" : fixed(high, 0)}`,
  staysAsItIs: "lässt kaum nach",
  lossOfBoard: (share) => `−${fixed(100 * share, 1)} je Board`,
  lossOfDelivery: (halfDegree, mph) => `−${fixed(100 * halfDegree, 0)} je ½°, −${fixed(100 * mph, 0)} je mph`,
  pinsDown: (pins) => `${fixed(pins, 1)} Pins`,
  pinsRange: (low, high) => `${fixed(low, 1)} bis ${fixed(high, 1)}`,
  boardsChange: (change) =>
    Math.abs(change) < 0.05 ? "gleiches Board" : `${fixed(Math.abs(change), 1)} Boards ${change > 0 ? "höher" : "dünner"}`,
  held: (share) => `${Math.round(share * 100)} %, gehalten`,
  feetMove: (boards) => `Füße ${moved(boards)}`,
  targetMove: (boards) => `Ziel ${moved(boards)}`,
  compare: "Nebeneinander auf der Bahn",
  compareNote: "Dünn grau: der heutige Schliff auf der heutigen Linie. Bis zu drei Schliffe in der Tabelle ankreuzen.",
  compareFull: "Drei sind zu sehen; nehmen Sie zuerst einen weg.",
  reasons: "Warum",
  rules: "Faustregeln des Fachs",
  agrees: "stimmt zu",
  disagrees: "stimmt nicht zu",
  assumptions: "Was angenommen ist",
  assumptionColumns: { what: "Annahme", value: "Genommen", range: "Könnte sein", mark: "Woher" },
  defaults: "Übliches genommen",
  defaultsNote: "Das hat niemand eingegeben; die üblichen Werte wurden genommen.",
  cautions: "Vorsicht",
  messages: "Hinweis",
  views: "Ansicht für",
  technician: "Werkstatt",
  customer: "Kunden",
  trial: "Versuch",
  inputs: "Eingabe",
} as const satisfies Translated<typeof en.PLAN_ANSWER>;

export const CUSTOMER = {
  title: (name) => (name === "" ? "Ihr Ball" : name),
  take: (finish) => `Wir schlagen ${finish} vor.`,
  same: "Ihr Ball behält seinen Schliff; er wird frisch und gleichmäßig gemacht.",
  noPick: "Ein Schliff allein löst es nicht. Sprechen wir über den Ball oder die Linie.",
  hook: (ft) =>
    Math.abs(ft) < 0.5
      ? "Er beginnt zu haken, wo er es jetzt tut."
      : `Er beginnt ${aboutFeet(ft)} ${ft > 0 ? "später" : "früher"} zu haken.`,
  turn: (deg) =>
    Math.abs(deg) < 0.15
      ? "Er kommt so steil in die Pins wie jetzt."
      : `Er kommt ${Math.abs(deg) < 0.5 ? "ein wenig " : ""}${deg > 0 ? "schärfer" : "sanfter"} in die Pins.`,
  move: (boards, hand) =>
    Math.abs(boards) < 0.75
      ? "Stehen Sie, wo Sie jetzt stehen."
      : `Stehen Sie etwa ${inWords(Math.round(Math.abs(boards)))} Board${Math.round(Math.abs(boards)) === 1 ? "" : "s"} weiter ${boards > 0 === (hand === "right") ? "links" : "rechts"}.`,
  firstShot: (boards) =>
    Math.abs(boards) < 0.75
      ? "Ändern Sie sonst nichts, trifft er, wo er jetzt trifft."
      : `Ändern Sie sonst nichts, trifft er ${boards > 0 ? "höher" : "dünner"} als jetzt.`,
  worn: "Eine Oberfläche ändert sich mit jedem Spiel; bringen Sie ihn wieder, wenn er anders auszusehen beginnt.",
} as const satisfies Translated<typeof en.CUSTOMER>;

/** Boards of a move, to the half board that a bowler can stand on. */
function moved(boards: number): string {
  const halves = Math.round(2 * boards) / 2;
  return halves === 0 ? "0" : `${fixed(Math.abs(halves), halves % 1 === 0 ? 0 : 1)} ${halves > 0 ? "nach innen" : "nach außen"}`;
}

const NUMBER_WORDS = ["null", "ein", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun", "zehn"];
const inWords = (n: number): string => NUMBER_WORDS[n] ?? String(n);

function aboutFeet(ft: number): string {
  const whole = Math.round(Math.abs(ft));
  return whole <= 1 ? "etwa einen Fuß" : `etwa ${inWords(whole)} Fuß`;
}

function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} und ${items.at(-1)}`;
}

export const DIFFERENCE = {
  hook: (ft, at) =>
    Math.abs(ft) < 0.05
      ? `hakt wie heute (${fixed(at, 1)} ft)`
      : `hakt ${fixed(Math.abs(ft), 1)} ft ${ft > 0 ? "später" : "früher"} (${fixed(at, 1)} ft)`,
  roll: (ft, at) =>
    Math.abs(ft) < 0.05
      ? `rollt wie heute (${fixed(at, 1)} ft)`
      : `rollt ${fixed(Math.abs(ft), 1)} ft ${ft > 0 ? "später" : "früher"} (${fixed(at, 1)} ft)`,
  noRoll: "rutscht an den Pins noch",
  entry: (deg, at) =>
    Math.abs(deg) < 0.05
      ? `Eintritt wie heute (${fixed(at, 1)}°)`
      : `Eintritt ${fixed(Math.abs(deg), 1)}° ${deg > 0 ? "steiler" : "flacher"} (${fixed(at, 1)}°)`,
  laydown: (boards, at) =>
    Math.abs(boards) < 0.05
      ? `aufgesetzt wie heute (Board ${fixed(at, 1)})`
      : `${fixed(Math.abs(boards), 1)} Boards weiter ${boards > 0 ? "innen" : "außen"} aufgesetzt (Board ${fixed(at, 1)})`,
  todaysLine: (boards) =>
    Math.abs(boards) < 0.05
      ? "auf der heutigen Linie: gleiches Board"
      : `auf der heutigen Linie: ${fixed(Math.abs(boards), 1)} Boards ${boards > 0 ? "höher" : "dünner"}`,
} as const satisfies Translated<typeof en.DIFFERENCE>;
