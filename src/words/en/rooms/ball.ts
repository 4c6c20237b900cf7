import { fixed } from "../../figures.ts";

/** English text of a ball's log. */
export const BALL_LOG = {
  owner: "Owner",
  nobody: "nobody's",
  job: "Job",
  finish: "Finish",
  unknown: "not known",
  sinceWork: "Games since the surface was worked",
  mass: "Weight",
  core: "Core",
  lb: (value: number) => `${value} lb`,
  rg: (value: number, differential: number | null) =>
    `RG ${fixed(value, 3)} in${differential === null ? "" : `, differential ${fixed(differential, 3)} in`}`,
  addGames: "Games bowled since the last entry",
  keepGames: "Add the games",
  gamesAllowed: "a whole number from 1 to 10000",
  scuffed: "The owner worked on it",
  machine: "A coin machine cleaned it",
  noteBy: "written down here, not seen done",
  log: "What happened to it",
  emptyLog: "Nothing is written down of this ball yet.",
  fade: "How the finish fades",
  fadeNote: "Computed for the finish last put on; drawn with its range; readings of this ball are not in it yet.",
  fadeUnknown: "What is on the ball is not known, so its fade is not drawn.",
  refresh: "next refresh",
  extraction: "oil extraction",
  resurfacing: "resurfacing",
  due: (what: string, value: number | null, low: number | null, high: number | null) => {
    if (value === null) return `${what}: not within what can be foreseen`;
    if (value === 0) return `${what}: due now`;
    return `${what}: in about ${fixed(value, 0)} games${low === null || high === null ? "" : ` (${fixed(low, 0)} to ${fixed(high, 0)})`}`;
  },
  ofAllGames: "Oil and resurfacing are counted over all games written down, because the records do not say when they were last done",
  surface: (who: string, finish: string | null, note: string) =>
    `${WHO[who] ?? who}${finish === null ? "" : `: ${finish}`}${note === "" ? "" : ` (${note})`}`,
  games: (count: number) => (count === 1 ? "1 game" : `${count} games`),
  found: (what: string, note: string) => `found: ${what}${note === "" ? "" : ` (${note})`}`,
  reading: (when: string, place: string, value: string) => `${when}, ${place}: ${value}`,
  ticket: (finish: string | null, state: string) => `ticket${finish === null ? "" : ` to ${finish}`}, ${state}`,
} as const;

const WHO: Readonly<Record<string, string>> = {
  shop: "worked in the shop",
  owner: "worked on by the owner",
  "coin machine": "cleaned by a coin machine",
  maker: "as the maker sold it",
  "somebody else": "worked on elsewhere",
};
