import { fixed } from "../../figures.ts";

/** English text of whose balls are due by games. */
export const DUE = {
  title: "Due by games",
  none: "No ball has seen more games than its finish usually keeps.",
  ball: (name: string, games: number, dueAt: number) => `${name}: ${games} games, due at about ${fixed(dueAt, 0)}`,
  why: "By the games written down and the usual fade of each cover; computed, not measured.",
  more: (count: number) => `and ${count} more`,
} as const;
