import type * as en from "../en/fade.ts";
import type { Translated } from "../translated.ts";
import { fixed } from "./figures.ts";

export const FADE = {
  title: "Wie der Schliff nachlässt",
  description: (name, start, at30) =>
    `Wirksame Rauheit von ${name} gegen Spiele: frisch ${start}, nach 30 Spielen ${at30} in der Laufspur; eine Messung ist ein Punkt.`,
  roughness: (unit) => `wirksame Rauheit, ${unit}`,
  games: "Spiele mit diesem Schliff",
  track: "Laufspur",
  offTrack: "daneben",
  band: "zwischen den Linien: neun von zehn dessen, was Spannen und Messungen übrig lassen",
  reading: "Messung",
  nowIs: (games, value, low, high) =>
    `Laufspur nach ${fixed(games, 0)} Spielen: ${fixed(value, 2)} µm wirksam (${fixed(low, 2)}–${fixed(high, 2)}).`,
  nowShown: (games, value, low, high, unit) =>
    `Laufspur nach ${games === 1 ? "1 Spiel" : `${fixed(games, 0)} Spielen`}: ${value} ${unit} wirksam (${low}–${high}).`,
  readings: (count) =>
    count === 0
      ? "Noch keine Messung dieses Balls: Seine Kurve ist die der Schale."
      : `Verschoben durch ${count === 1 ? "eine Messung" : `${count} Messungen`} dieses Balls.`,
  refresh: "Schliff auffrischen",
  extraction: "Öl herausziehen",
  resurfacing: "Oberfläche neu aufbauen",
  dueNow: "jetzt fällig",
  never: "nicht abzusehen",
  inGames: (value, low, high) =>
    `in etwa ${fixed(value, 0)} Spielen (${low === null ? "?" : fixed(low, 0)}–${high === null ? "nie" : fixed(high, 0)})`,
  onDay: (date) => `, etwa ${date}`,
} as const satisfies Translated<typeof en.FADE>;
