import { laneField } from "#contract/job/lane";
import { DefaultsTaken } from "#contract/resolve/defaultsTaken";
import { resolveLane } from "#contract/resolve/lane";
import { laneChart } from "#drawing/laneChart";
import type { Layout } from "#drawing/laneFrame";
import { type OilSection, oilSections } from "#drawing/oilSections";
import { PAGE_PAINT } from "#drawing/paint";
import { filmOfPattern } from "#engine/lane/film";
import { toFilmSheet } from "#engine/lane/filmMap";
import type { FilmSheet } from "#engine/lane/filmSheet";
import { oilSheetTotalMl } from "#engine/lane/oilSheet";
import type { OilDrawn } from "./protocol.ts";

/** Where the film is told in figures: the boards of the arrows, and distances over the pattern. */
const BOARDS = [2, 5, 10, 15, 20, 25, 30, 35, 38];
const SECTIONS = 5;

/**
 * A pattern as the records keep it, drawn as a sea chart from the right edge and told in figures.
 *
 * @throws {JobFault} where only friction is given
 */
export function drawOil(kept: unknown, title: string): OilDrawn {
  const oil = laneField.parse(kept);
  const stated = oil.oilSheet?.stated;
  // What the sheet states is compared beside the chart; a sheet that disagrees with itself is drawn all the same.
  const { pattern } = resolveLane(
    oil.oilSheet === undefined ? oil : { ...oil, oilSheet: { ...oil.oilSheet, stated: {} } },
    new DefaultsTaken(),
  );
  const film = toFilmSheet(filmOfPattern(pattern));
  const draw = (layout: Layout) =>
    laneChart({ film, hand: "right", courses: [], title }, { layout, paint: PAGE_PAINT, id: `oil-${layout}` });
  const sections = sectionsOf(film);
  const drawAcross = (layout: Layout) => oilSections(sections, { layout, paint: PAGE_PAINT, id: `across-${layout}` });
  const { lengthFt, volumeMl, ratio, meanUm } = film;
  return {
    lane: { lying: draw("lying"), upright: draw("upright") },
    lengthFt,
    volumeMl,
    ratio,
    meanUm,
    laidMl: pattern.kind === "oilSheet" ? oilSheetTotalMl(pattern.sheet) : null,
    statedMl: stated?.totalMl ?? null,
    statedRatio: stated?.ratio ?? null,
    across: { lying: drawAcross("lying"), upright: drawAcross("upright") },
    sections: { boards: BOARDS, rows: sections.map(({ ft, um }) => ({ ft, um: BOARDS.map((board) => um[board - 1]) })) },
  };
}

/** Sections across the lane, evenly along the pattern; the first a little behind the foul line. */
function sectionsOf(film: FilmSheet): readonly OilSection[] {
  return Array.from({ length: SECTIONS }, (_, i) => {
    const ft = Math.round(2 + (i * (film.lengthFt - 4)) / (SECTIONS - 1));
    const row = Math.round((ft - film.firstFt) / film.stepFt);
    return { ft, um: film.um.slice(row * film.columns, (row + 1) * film.columns) };
  });
}
