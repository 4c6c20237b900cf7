import { fixed } from "../figures.ts";

/** Words of the fade: the chart and the report. */
export const FADE = {
  title: "How the finish fades",
  description: (name: string, start: string, at30: string) =>
    `Effective roughness of ${name} against games: ${start} fresh, ${at30} in the track after 30 games; a reading is a dot.`,
  roughness: (unit: string) => `effective roughness, ${unit}`,
  games: "games on this finish",
  track: "track",
  offTrack: "beside it",
  band: "between the lines: nine in ten of what the ranges and the readings leave",
  reading: "reading",
  nowIs: (games: number, value: number, low: number, high: number) =>
    `Track after ${fixed(games, 0)} games: ${fixed(value, 2)} µm effective (${fixed(low, 2)}–${fixed(high, 2)}).`,
  nowShown: (games: number, value: string, low: string, high: string, unit: string) =>
    `Track after ${games === 1 ? "1 game" : `${fixed(games, 0)} games`}: ${value} ${unit} effective (${low}–${high}).`,
  readings: (count: number) =>
    count === 0
      ? "No reading of this ball yet: its curve is the cover's."
      : `Moved by ${count === 1 ? "one reading" : `${count} readings`} of this ball.`,
  refresh: "Refresh the finish",
  extraction: "Draw the oil out",
  resurfacing: "Resurface",
  dueNow: "due now",
  never: "not within sight",
  inGames: (value: number, low: number | null, high: number | null) =>
    `in about ${fixed(value, 0)} games (${low === null ? "?" : fixed(low, 0)}–${high === null ? "never" : fixed(high, 0)})`,
  onDay: (date: string) => `, about ${date}`,
} as const;
