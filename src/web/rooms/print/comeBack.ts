import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import { assume } from "#engine/assumptions";
import type { Work } from "#engine/signed/work";
import { careOf } from "#engine/surface/care";
import { effectiveRaUm, type Finish } from "#engine/surface/finish";
import { ballUse } from "../../measured/ballUse.ts";

export interface ComeBack {
  readonly games: number;
  /** About when that is, ISO; null where nobody knows how often the ball is thrown. */
  readonly at: string | null;
  readonly why: "refresh" | "extraction";
}

const DAY_MS = 86_400_000;
/** As exactly as it can be said. */
const TO_FIVE = 5;
/** A day further off than this is no date that anybody keeps. */
const FURTHEST_DAYS = 366;

/**
 * When a ball that is worked to a finish should come back, by whichever is due first; null where nothing is that can be counted.
 * Where nobody wrote down when oil last came out, it is counted from the first game that is known.
 *
 * @param tickets all of the ball
 */
export function comeBack(ball: Ball, tickets: readonly Ticket[], work: Work<SignedEntry>, finish: Finish, nowMs: number): ComeBack | null {
  const known = ballUse(ball, tickets, []);
  const isExtracted = work.signed.some(({ kind }) => kind === "extract");
  const { refresh, extraction } = careOf({
    ...known.use,
    startUm: effectiveRaUm(finish, assume()),
    gamesSince: 0,
    gamesSinceExtraction: isExtracted ? 0 : known.use.gamesSinceExtraction,
  });
  const due = [
    { games: refresh.value, why: "refresh" as const },
    { games: extraction.value, why: "extraction" as const },
    // What is due already, and was not done, is no reason to come back: it was left so.
  ].flatMap(({ games, why }) =>
    games === null || games <= 0 ? [] : [{ games: Math.max(TO_FIVE, TO_FIVE * Math.round(games / TO_FIVE)), why }],
  );
  if (due.length === 0) return null;
  const first = due.reduce((soonest, one) => (one.games < soonest.games ? one : soonest));
  const perWeek = gamesPerWeek(ball);
  const days = perWeek === null ? null : (7 * first.games) / perWeek;
  return { ...first, at: days === null || days > FURTHEST_DAYS ? null : new Date(nowMs + days * DAY_MS).toISOString() };
}

const WEEK_MS = 7 * 86_400_000;
/** Two evenings a week apart say nothing yet of a habit. */
const LEAST_WEEKS = 3;
/** What somebody bowled years ago is no habit of today. */
const ENTRIES = 10;

/** How many games a week a ball sees, by what was written down of late; null where too little was. An entry's games were bowled since the one before. */
export function gamesPerWeek({ games }: Pick<Ball, "games">): number | null {
  const entries = games.toSorted((a, b) => a.at.localeCompare(b.at)).slice(-ENTRIES);
  const [first, last] = [entries.at(0), entries.at(-1)];
  if (first === undefined || last === undefined) return null;
  const weeks = (Date.parse(last.at) - Date.parse(first.at)) / WEEK_MS;
  const total = entries.slice(1).reduce((sum, entry) => sum + entry.games, 0);
  return weeks < LEAST_WEEKS || total === 0 ? null : total / weeks;
}
