/** How many worlds the first answer takes on the lane as found, and a final one through the session; and how many one that is refined while somebody looks at it, where there are so many. */
export const WORLDS = { first: 16, final: 64, refined: 256 } as const;
