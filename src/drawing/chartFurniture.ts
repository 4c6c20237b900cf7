import type { Course, Phase } from "#engine/motion/course";
import { type Finish, finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import { fixed } from "#words/figures";
import { type Emphasis, PHASE_STROKES } from "./courseLine.ts";
import { type LaneFrame, type Layout, stretch } from "./laneFrame.ts";
import { type Paint, SANS, SERIF } from "./paint.ts";
import { el, textEl } from "./svg.ts";
import { texturedBall } from "./texture.ts";

interface LegendCourse {
  readonly name: string;
  readonly finish: Finish;
  readonly course: Course;
  readonly emphasis: Emphasis;
}

const ROW: Readonly<Record<Layout, number>> = { lying: 25, upright: 37 };
/** Upright, the key of the phases has a line of its own above the courses. */
const KEY_ABOVE: Readonly<Record<Layout, number>> = { lying: 10, upright: 30 };

/** Width of a letter over its height, in the widest of the serif faces, bold. */
const TITLE_LETTER = 0.64;

export function legendHeight(courses: number, layout: Layout): number {
  return courses === 0 ? 0 : KEY_ABOVE[layout] + courses * ROW[layout] + 12;
}

/** Title in a double frame, the oil in figures, and the rose that says which way the pins lie and how the scales differ. */
export function cartouche(title: string, oilWords: string, frame: LaneFrame, width: number, paint: Paint, font: number): string {
  const lying = frame.layout === "lying";
  const size = lying ? 19 : 15;
  const left = lying ? frame.left : 10;
  const height = lying ? 50 : 46;
  const scaleWords = `${CHART.film} · ${CHART.across(stretch(frame))}`;
  // The frame is sized by its words, and never so wide that it meets what stands right of it.
  const most = lying ? width - left - 88 - scaleWords.length * font * 0.5 : width - 100;
  const inner = Math.min(most, Math.max(title.length * size * TITLE_LETTER, oilWords.length * font * 0.5) + 26);
  const rose = { x: width - (lying ? 40 : 28), y: 10 + height / 2, r: lying ? 19 : 15 };
  const small = { "font-family": SERIF, "font-style": "italic", "font-size": font, fill: paint.faint };
  return el(
    "g",
    { class: "gw-cartouche" },
    el("rect", { x: left, y: 10, width: inner, height, fill: paint.lane, stroke: paint.ink, "stroke-width": 1.8 }),
    el("rect", { x: left + 3.5, y: 13.5, width: inner - 7, height: height - 7, fill: "none", stroke: paint.ink, "stroke-width": 0.6 }),
    textEl(title, {
      x: left + 13,
      y: 10 + height * 0.46,
      "font-family": SERIF,
      "font-size": size,
      "font-weight": 600,
      fill: paint.ink,
      ...fitted(title, size * TITLE_LETTER, inner - 26),
    }),
    textEl(oilWords, { x: left + 13, y: 10 + height * 0.82, ...small }),
    lying
      ? textEl(scaleWords, { x: width - 72, y: 10 + height * 0.82, "text-anchor": "end", ...small })
      : textEl(scaleWords, {
          x: 11,
          y: 76,
          ...small,
          "font-size": font * 0.98,
          ...fitted(scaleWords, font * 0.45, width - 20),
        }),
    pinsRose(rose, frame, paint),
  );
}

/** Squeezes a line that would not fit. */
function fitted(words: string, perLetter: number, room: number): Record<string, string | number> {
  return words.length * perLetter > room ? { textLength: room, lengthAdjust: "spacingAndGlyphs" } : {};
}

/** A compass rose whose needle points to the pins. */
function pinsRose(at: { x: number; y: number; r: number }, frame: LaneFrame, paint: Paint): string {
  const turn = frame.layout === "lying" ? 90 : 0;
  const { x, y, r } = at;
  const point = (angle: number, length: number): string =>
    el("path", {
      d: `M0,${-length}L${length * 0.16},0L0,${length * 0.3}L${-length * 0.16},0Z`,
      transform: `rotate(${angle})`,
      fill: angle === 0 ? paint.ink : paint.lane,
      stroke: paint.ink,
      "stroke-width": 0.7,
    });
  return el(
    "g",
    { class: "gw-rose", transform: `translate(${x} ${y}) rotate(${turn})` },
    el("circle", { r, fill: paint.lane, stroke: paint.ink, "stroke-width": 0.8 }),
    el("circle", { r: r - 3, fill: "none", stroke: paint.ink, "stroke-width": 0.5, "stroke-dasharray": "1 3" }),
    ...[90, 180, 270].map((angle) => point(angle, r * 0.62)),
    point(0, r * 1.16),
  );
}

/** What the three kinds of line mean. */
export function phaseKey(frame: LaneFrame, width: number, top: number, paint: Paint, font: number): string {
  const lying = frame.layout === "lying";
  const phases: readonly Phase[] = ["skid", "hook", "roll"];
  const left = lying ? width - 250 : 12;
  const y = lying ? top + 22 : top + 14;
  const entries = phases.map((phase, i) => {
    const x = left + i * (lying ? 80 : 82);
    return (
      el("path", { d: `M${x},${y}h34`, stroke: paint.ink, fill: "none", ...PHASE_STROKES[phase] }) +
      textEl(CHART[phase], { x: x + 40, y: y + font * 0.35, "font-family": SANS, "font-size": font, fill: paint.ink })
    );
  });
  return el("g", { class: "gw-key" }, ...entries);
}

/** One row a course: its letter, its ball's texture, and its figures. */
export function legend(courses: readonly LegendCourse[], id: string, frame: LaneFrame, top: number, paint: Paint, font: number): string {
  const { layout } = frame;
  const lettered = courses.length > 1;
  const rows = courses.map((c, i) => {
    const y = top + KEY_ABOVE[layout] + i * ROW[layout] + 12;
    const colour = c.emphasis === "pick" ? paint.accent : paint.ink;
    const sans = { "font-family": SANS, "font-size": font, fill: colour };
    const name = `${lettered ? `${String.fromCharCode(65 + i)}  ` : ""}${CHART.courseName(finishText(c.finish), c.name)}`;
    const head = textEl(name, {
      x: 44,
      y: y + font * 0.35,
      ...sans,
      "font-weight": c.emphasis === "other" ? 400 : 650,
      ...fitted(name, font * 0.56, layout === "lying" ? 250 : 300),
    });
    const figures = courseFigures(c.course).join(" · ");
    const tail =
      layout === "lying"
        ? textEl(figures, { x: 306, y: y + font * 0.35, ...sans, fill: paint.ink })
        : textEl(figures, { x: 44, y: y + font * 1.55, ...sans, fill: paint.ink, "font-size": font * 0.96 });
    return (
      texturedBall(
        { x: 26, y: layout === "lying" ? y : y + 6, radius: layout === "lying" ? 10 : 12 },
        `${id}-finish-${i}`,
        c.finish,
        paint,
      ) +
      head +
      tail
    );
  });
  return el("g", { class: "gw-legend" }, ...rows);
}

function courseFigures(course: Course): string[] {
  const figures = [
    course.hookStartFt === null ? null : `${CHART.hook} ${fixed(course.hookStartFt, 1)} ft`,
    course.rollStartFt === null ? CHART.stillSlipping : `${CHART.roll} ${fixed(course.rollStartFt, 1)} ft`,
  ];
  figures.push(course.entryAngleDeg === null ? CHART.leavesLane : CHART.entry(course.entryAngleDeg));
  return figures.filter((f): f is string => f !== null);
}
