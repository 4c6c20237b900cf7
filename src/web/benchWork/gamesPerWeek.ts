import type { Ball } from "#contract/records/ball";

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
