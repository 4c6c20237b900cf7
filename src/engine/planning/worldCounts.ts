/** How many worlds the first answer takes on the lane as found, and a final one through the session. */
export const WORLDS = { first: 16, final: 64 } as const;
