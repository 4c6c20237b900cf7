import type { StopId } from "#engine/rules/stops";
import type { AbrasiveId } from "#engine/surface/abrasives";
import type { RECIPE_REMARKS } from "#engine/surface/recipe";
import type { StageKind, StagePlan, StageWhy } from "#engine/surface/stages";
import type * as en from "../en/bench.ts";
import { numberedNames } from "../numberedNames.ts";
import type { Sentence } from "../params.ts";
import type { Translated } from "../translated.ts";
import { fixed } from "./figures.ts";

export const ABRASIVE_NAMES: Readonly<Record<AbrasiveId, string>> = {
  ...numberedNames(
    (number) => `Pad ${number}`,
    (number) => `Nassschleifpapier ${number}`,
  ),
  "woven-coarse": "grobes Vliespad",
  "woven-fine": "feines Vliespad",
  compound: "Schleifpaste",
  "cutting-polish": "Politur, die schleift",
  "slip-polish": "Politur, die füllt",
};

export const STAGE_NAMES: Readonly<Record<StageKind, string>> = {
  clean: "Reinigen",
  open: "Oberfläche öffnen",
  extract: "Öl herausziehen",
  dryOff: "Trocknen und abkühlen lassen",
  plug: "Stopfen angleichen",
  cut: "Schleifen",
  polish: "Polieren",
  check: "Alle Seiten prüfen",
};

export const STAGE_REASONS: Readonly<Record<StageWhy, string>> = {
  before: "Schmutz würde eingeschliffen",
  oil: "Öl in der Schale",
  openPores: "damit das Öl herauskommt",
  heat: "kein warmer Ball auf das Drehgerät",
  plugFlush: "der Stopfen steht vor",
  deepWear: "nimmt die abgenutzte Laufspur herunter",
  scratches: "nimmt die tiefen Kratzer herunter",
  unknownBefore: "niemand weiß, was darauf ist, darum wird zuerst zurückgeschliffen",
  establish: "ringsum eine Textur",
  removeLast: "beseitigt die letzte Stufe",
  polishOver: "über den Grund",
  prove: "Messungen oder Vergleichsball",
};

export const STOP_SENTENCES: Readonly<Record<StopId, string>> = {
  crack: "Halt: Er hat einen Riss. Kein Drehgerät, keine Wärme. Fotografieren und zuerst nach der Garantie fragen.",
  hollowSound:
    "Halt: Er klingt hohl; der Kern könnte lose sein. Kein Drehgerät, keine Wärme. Fotografieren und zuerst nach der Garantie fragen.",
  claimOpen: "Halt: Ein Anspruch könnte offen sein. Arbeit an der Oberfläche kann ihn beenden; zuerst den Hersteller fragen.",
  coldBall: "Noch nicht: Den kalten Ball auf Raumwärme kommen lassen.",
  serialNotPhotographed: "Noch nicht: Die Seriennummer fotografieren, bevor sie abgeschliffen werden kann.",
  insertsNotMasked:
    "Noch nicht: Einsätze herausnehmen oder abkleben, vor Wasser oder Wärme; danach die Löcher trocknen und die Kanten ansehen.",
};

export const RECIPE_SENTENCES: Readonly<Record<(typeof RECIPE_REMARKS)[number], Sentence>> = {
  "recipe.paperDry": (p) => `Stufe ${fixed(p.number("stage"), 0)}: Nassschleifpapier trocken ruiniert den Ball; viel Wasser.`,
  "recipe.paperOnResin": (p) =>
    `Stufe ${fixed(p.number("stage"), 0)}: Nassschleifpapier frisst Reaktivharz; es ist für Stopfen und tiefen Neuaufbau da.`,
  "recipe.step": (p) =>
    `Stufe ${fixed(p.number("stage"), 0)}: Das Korn ist ${fixed(p.number("ratio"), 1)}-mal feiner als das letzte; etwa das Doppelte kann eine Stufe beseitigen.`,
  "recipe.backwards": (p) => `Stufe ${fixed(p.number("stage"), 0)}: geht auf ein gröberes Korn zurück, die Stufe davor war also umsonst.`,
  "recipe.tooShort": (p) =>
    `Stufe ${fixed(p.number("stage"), 0)}: trägt etwa ${fixed(p.number("removedUm"), 1)} µm ab, wo ${fixed(p.number("neededUm"), 1)} übrig waren; etwa ${fixed(p.number("seconds"), 0)} s je Seite würden genügen.`,
  "recipe.sides": (p) =>
    `Stufe ${fixed(p.number("stage"), 0)}: ${fixed(p.number("sides"), 0)} Seiten lassen Streifen; sechs bedecken den Ball gleichmäßig.`,
  "recipe.endsElsewhere": (p) =>
    `Am Ende sind es etwa ${fixed(p.number("raUm"), 2)} µm wirksam; ${p.text("wanted")} sind ${fixed(p.number("wantedUm"), 2)} µm.`,
  "recipe.never": (p) =>
    `${fixed(p.number("number"), 0)} ist auf dieser Schale nie ein letzter Schliff; ${fixed(p.number("least"), 0)} ist das Mindeste.`,
  "recipe.good": () => "Nichts daran auszusetzen.",
};

export const WHAT_ENDS: Readonly<Record<StagePlan["ends"][number]["what"], string>> = {
  diameter: "bis der Ball unter dem kleinsten Durchmesser ist",
  serial: "bis die Seriennummer weg ist",
};

export const KNOWN_FROM: Readonly<Record<StagePlan["now"]["from"], string>> = {
  reading: "nach der Messung",
  comparison: "mit Auge und Hand gegen den Vergleichsball",
  games: "geschätzt aus den Spielen darauf",
  nothing: "niemand weiß, was darauf ist: weit geschätzt",
};

export const RESTATED = {
  now: "Laufspur jetzt",
  sides: "Seiten, in dieser Reihenfolge",
  after: "Danach erwartet",
  removed: "Abgetragen",
  bench: "Am Drehgerät",
  ends: "Dieselbe Arbeit geht noch",
  recipe: "Das gegebene Rezept",
  batch: "In einem Zug",
  ownCut: "Abtrag dieser Person gegen den üblichen, nach den Messungen",
  ruleBook: "Diese Zahlen sind Schätzungen mit weiten Spannen: nach der Arbeit messen und den Vergleichsball ansehen.",
} as const satisfies Translated<typeof en.RESTATED>;
