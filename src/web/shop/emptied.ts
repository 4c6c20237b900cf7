/**
 * A field after what was in it was kept: empty, unless something else was typed meanwhile.
 * A write is done only when the lists it touches were read again, and nobody waits with typing for that.
 */
export const emptied =
  <T>(kept: T, empty: T) =>
  (now: T): T =>
    Object.is(now, kept) ? empty : now;
