/** How useful one more look or measurement is, by the information it is expected to bring. */
export type Usefulness = "very" | "somewhat" | "little";

/** From so many nats on it is very useful (what was uncertain becomes some three fifths as wide), and from so many somewhat. Chosen. */
const VERY_FROM = 0.5;
const SOMEWHAT_FROM = 0.15;

/** @param nats ≥ 0 */
export function usefulnessOf(nats: number): Usefulness {
  if (nats >= VERY_FROM) return "very";
  return nats >= SOMEWHAT_FROM ? "somewhat" : "little";
}
