/** How many games, where nobody counted them: what a shop hears across the counter. */
export const GAMES_WORD_IDS = ["a few", "a season"] as const;
export type GamesWord = (typeof GAMES_WORD_IDS)[number];

/** What they stand for, *common practice*: a few are two or three league nights; a season is some thirty nights of three games. */
export const GAMES_WORDS: Readonly<Record<GamesWord, number>> = { "a few": 8, "a season": 90 };
