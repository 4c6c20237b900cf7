import type { SideId } from "#engine/surface/padWork/sides";
import type * as en from "../en/padWork.ts";
import type { Translated } from "../translated.ts";
import { fixed } from "./figures.ts";

export const SIDE_NAMES: Readonly<Record<SideId, string>> = {
  grip: "Griff",
  opposite: "gegenüber dem Griff",
  left: "links vom Griff",
  right: "rechts vom Griff",
  fingers: "über den Fingern",
  thumb: "unter dem Daumen",
};

export const SIDE_LABELS: Readonly<Record<SideId, string>> = {
  grip: "Griff",
  opposite: "gegenüber",
  left: "links",
  right: "rechts",
  fingers: "Finger",
  thumb: "Daumen",
};

const percent = (share: number) => `${fixed(100 * share, 0)} %`;

export const PAD_WORK = {
  title: "Padarbeit über den Ball",
  evenness: ({ cv, least, most, underHalf }) =>
    `Schwankt um ${percent(cv)} des Mittels; die dünnste Stelle bekam das ${fixed(least, 2)}-Fache, die vollste das ${fixed(most, 2)}-Fache; ${percent(underHalf)} des Balls bekamen weniger als die Hälfte.`,
  crossing: ({ crossing }) => `Kratzer kreuzen sich mit ${fixed(crossing, 2)} (0 alle in einer Richtung, 1 keine Richtung bevorzugt).`,
  thin: "Dünne Stellen",
  noThin: "Keine Stelle bekam weniger als drei Viertel des Mittels.",
  spot: ({ side, awayDeg, overMean }) => `${fixed(overMean, 2)} des Mittels, ${fixed(awayDeg, 0)}° von der Mitte: ${SIDE_NAMES[side]}`,
  columns: {
    side: "Seite",
    seconds: "Sekunden",
    share: "der ganzen Arbeit",
    without: "wenn ausgelassen",
    varies: "schwankt um",
    least: "am dünnsten",
    crossing: "kreuzen",
  },
  compared: "Dieselben Stufen in derselben Zeit auf",
  onSides: (sides, { cv, least, crossing }) =>
    `${sides} Seiten: schwankt um ${percent(cv)}, am dünnsten ${fixed(least, 2)} des Mittels, Kratzer kreuzen ${fixed(crossing, 2)}`,
  depth: ({ deepestUm, leastUm }) => `Abgetragen: ${fixed(leastUm, 1)} bis ${fixed(deepestUm, 1)} µm.`,
  outOfRound: ({ outOfRoundUm, outOfRoundIn, ofAllowed }) =>
    `Unrund um ${fixed(outOfRoundUm, 1)} µm (${fixed(outOfRoundIn, 5)} in), ${percent(ofAllowed)} der erlaubten 0,010 in (USBC, aus dem Gedächtnis), bei einem Ball, der vorher rund war.`,
  flatRisk:
    "Vorsicht: Diese Arbeit allein bringt den Ball mehr als den halben Weg zum Unrunden. Das Pad in Bewegung halten oder die Arbeit verteilen.",
  flatOver: "Vorsicht: Diese Arbeit allein macht den Ball unrunder als erlaubt. Nicht tun; den Ball messen.",
  usual: (fields) => `Wie üblich genommen, weil die Datei es nicht sagt: ${fields}.`,
  estimate: (low, high) =>
    `Tiefen sind Schätzungen: zwischen dem ${fixed(low, 1)}- und dem ${fixed(high, 1)}-Fachen. Die Gleichmäßigkeit hängt nicht daran. Nach der Arbeit messen.`,
  hemisphereGrip: "Griffseite",
  hemisphereOpposite: "Gegenseite",
  textureKey: "Körner: dichter, wo das Pad mehr gearbeitet hat",
  contourKey: "Linien: Arbeit über dem Mittel, gestrichelt darunter",
  worked: (label, seconds) => `${label} ${fixed(seconds, 0)} s`,
  notWorked: (label) => `${label}, nicht bearbeitet`,
  axisKey: "Kreuz im Ring: Mitte einer Seite, mit ihren Sekunden",
  summary: ({ cv, crossing }) => `schwankt um ${percent(cv)} · Kratzer kreuzen ${fixed(crossing, 2)}`,
  noWork: "Es wurde nicht gearbeitet.",
  description: ({ cv, least, most, crossing }) =>
    `Arbeit über den Ball, vom Griff und von der Gegenseite gesehen. Sie schwankt um ${percent(cv)} des Mittels, von ${fixed(least, 2)} bis ${fixed(most, 2)}; Kratzer kreuzen sich mit ${fixed(crossing, 2)}.`,
} as const satisfies Translated<typeof en.PAD_WORK>;
