import type * as en from "../../en/rooms/due.ts";
import type { Translated } from "../../translated.ts";
import { fixed } from "../figures.ts";

export const DUE = {
  title: "Nach Spielen fällig",
  none: "Kein Ball hat mehr Spiele hinter sich, als sein Schliff gewöhnlich hält.",
  ball: (name: string, games: number, dueAt: number) => `${name}: ${games} Spiele, fällig nach etwa ${fixed(dueAt, 0)}`,
  why: "Nach den aufgeschriebenen Spielen und dem üblichen Nachlassen jeder Schale; gerechnet, nicht gemessen.",
  more: (count: number) => `und ${count} weitere`,
} as const satisfies Translated<typeof en.DUE>;
