import type { Hand } from "#engine/delivery/bowler";
import type { FilmSheet } from "#engine/lane/filmSheet";
import { CHART } from "#words/en/charts";
import { type Layout, laneFrame } from "./laneFrame.ts";
import { laneStrip } from "./laneStrip.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { type PathNow, playedLines } from "./playedLine.ts";
import { el, picture, textEl } from "./svg.ts";

/** The lane at one moment. */
export interface LaneMoment {
  readonly title: string;
  readonly film: FilmSheet;
  /** What is to be read beside it, a short phrase each. */
  readonly says: readonly string[];
  /** The first is drawn strongest: the one it is about. */
  readonly paths: readonly PathNow[];
}

export interface TransitionInput {
  readonly hand: Hand;
  readonly moments: readonly LaneMoment[];
}

export interface TransitionOptions {
  /** `lying` is 960 wide, words beside the strip; `upright` 360, words below it. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  readonly id?: string;
}

/** The oil as it is laid and after each game, one still strip of lane each, with the lines that were played. */
export function transitionChart(input: TransitionInput, options: TransitionOptions = {}): string {
  const paint = options.paint ?? FILE_PAINT;
  const id = options.id ?? "transition";
  const lying = (options.layout ?? "lying") === "lying";
  const frame = laneFrame(
    "lying",
    input.hand,
    lying ? { left: 10, top: 8, width: 620, height: 122 } : { left: 8, top: 30, width: 344, height: 72 },
  );
  const rows = input.moments.map(({ says }) => (lying ? Math.max(148, 56 + says.length * 18) : 118 + says.length * 17));
  const tops = rows.map((_, i) => 6 + rows.slice(0, i).reduce((sum, row) => sum + row, 0));
  const description = CHART.transitionDescription(input.moments.map(({ title, says }) => `${title}: ${says.join(", ")}.`));
  return picture(
    { width: lying ? 960 : 360, height: 6 + rows.reduce((sum, row) => sum + row, 0) },
    { id, title: CHART.transitionTitle, description },
    el(
      "defs",
      {},
      el("clipPath", { id: `${id}-lane` }, el("rect", { x: frame.left, y: frame.top, width: frame.width, height: frame.height })),
    ),
    el("rect", { width: "100%", height: "100%", fill: paint.paper }),
    ...input.moments.map((moment, i) =>
      el(
        "g",
        { class: "gw-strip", transform: `translate(0 ${tops[i]})` },
        laneStrip(moment.film, frame, paint),
        el("g", { "clip-path": `url(#${id}-lane)` }, ...playedLines(moment.paths, frame, paint)),
        momentWords(moment, lying, paint),
      ),
    ),
  );
}

function momentWords({ title, says }: LaneMoment, lying: boolean, paint: Paint): string {
  const [x, y] = lying ? [648, 26] : [8, 18];
  const words = { "font-family": SANS, "font-size": lying ? 13 : 11.5, fill: paint.ink };
  return [
    textEl(title, { x, y, "font-family": SERIF, "font-size": lying ? 17 : 15, "font-weight": 600, fill: paint.ink }),
    ...says.map((phrase, i) => textEl(phrase, { ...words, x, y: lying ? y + 24 + i * 18 : 120 + i * 17 })),
  ].join("");
}
