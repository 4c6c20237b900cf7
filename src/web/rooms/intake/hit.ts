import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";

/** Fewer letters would find half the shop. */
export const LEAST_LETTERS = 2;

export type Hit = { readonly kind: "ball"; readonly ball: Ball } | { readonly kind: "bowler"; readonly bowler: Bowler };

interface Found {
  readonly balls: readonly Ball[];
  readonly bowlers: readonly Bowler[];
}

/** What was found, balls first. A whole serial number is that ball, whatever else ends in it. */
export function hitsOf({ balls, bowlers }: Found, asked: string): readonly Hit[] {
  const whole = balls.filter(({ serial }) => serial?.toLowerCase() === asked.toLowerCase());
  if (whole.length === 1) return [{ kind: "ball", ball: whole[0] }];
  return [...balls.map((ball): Hit => ({ kind: "ball", ball })), ...bowlers.map((bowler): Hit => ({ kind: "bowler", bowler }))];
}

/** The ticket whose code was scanned; null for anything else. */
export function ticketOfCode(scanned: string): string | null {
  return /^https?:\/\/\S+\/tickets\/([0-9a-f-]{36})$/.exec(scanned)?.[1] ?? null;
}
