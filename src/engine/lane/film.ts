import type { Hand } from "../delivery/bowler.ts";
import { refuse } from "../fault.ts";
import { type FilmMap, filmFrom, mirrored } from "./filmMap.ts";
import { pointsFilm } from "./filmPoints.ts";
import type { PatternSource } from "./lane.ts";
import { oilSheetFilm } from "./oilSheet.ts";
import { namedFilmUm, PATTERN_IDS, PATTERNS, type PatternId } from "./patterns.ts";

/** What was worked out for a pattern, for as long as somebody holds it: every world of a plan lays the same film. */
const laid = new WeakMap<PatternSource, FilmMap>();

/** The film that a pattern lays, as it lies on the lane. Nobody writes into it. */
export function filmOfPattern(pattern: PatternSource): FilmMap {
  const known = laid.get(pattern) ?? layFilm(pattern);
  laid.set(pattern, known);
  return known;
}

function layFilm(pattern: PatternSource): FilmMap {
  switch (pattern.kind) {
    case "named": {
      if (!(pattern.id in PATTERNS)) refuse("lane.pattern", pattern.id, `one of ${PATTERN_IDS.join(", ")}`);
      const record = PATTERNS[pattern.id as PatternId];
      return filmFrom(record.lengthFt, (board, ft) => namedFilmUm(record, board, ft));
    }
    case "oilSheet":
      return oilSheetFilm(pattern.sheet);
    case "filmPoints":
      if (pattern.points.length === 0) refuse("lane.filmPoints.points", "none", "at least one point");
      return pointsFilm(pattern.points, pattern.lengthFt);
  }
}

/** The lane as a right-hander would see it: a left-hander's is mirrored here, at the engine's edge, and nowhere else. */
export function handed(film: FilmMap, hand: Hand): FilmMap {
  return hand === "left" ? mirrored(film) : film;
}
