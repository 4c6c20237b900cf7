import type { CoverId } from "#engine/ball/ball";
import { COVER_UNKNOWN, COVER_WORDS } from "./en/screens.ts";

/** What a ball is covered with, in a word; or that nobody knows it. */
export function coverWord(cover: CoverId | null): string {
  return cover === null ? COVER_UNKNOWN : COVER_WORDS[cover];
}
