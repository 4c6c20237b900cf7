import type { Hand } from "#engine/delivery/bowler";
import type { FilmSheet } from "#engine/lane/filmSheet";
import type { Course } from "#engine/motion/course";
import { type Finish, finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import { courseLine } from "./courseLine.ts";
import { type LaneFrame, type Layout, laneFrame } from "./laneFrame.ts";
import { laneStrip } from "./laneStrip.ts";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";
import { finishTexture, texturedBall } from "./texture.ts";

export interface ComparedFinish {
  readonly finish: Finish;
  readonly course: Course;
  readonly picked: boolean;
  /** What is different from today's line, a short phrase each. */
  readonly differences: readonly string[];
}

export interface SmallMultiplesInput {
  readonly film: FilmSheet;
  readonly hand: Hand;
  /** Today's course, drawn thin under each of the others. */
  readonly today: Course;
  /** One to three. */
  readonly compared: readonly ComparedFinish[];
}

export interface SmallMultiplesOptions {
  /** `lying` is 960 wide, words beside the strip; `upright` 360, words below it. The strips lie in both: they are to be compared along the lane. */
  readonly layout?: Layout;
  readonly paint?: Paint;
  readonly id?: string;
}

/** A strip's place down the picture. */
interface Strip {
  readonly top: number;
  readonly height: number;
}

/** Up to three finishes, one still strip of lane each, on the same scales. */
export function smallMultiples(input: SmallMultiplesInput, options: SmallMultiplesOptions = {}): string {
  const layout = options.layout ?? "lying";
  const paint = options.paint ?? FILE_PAINT;
  const id = options.id ?? "compare";
  const lying = layout === "lying";
  const strips = stripsOf(input.compared, lying);
  const frame = laneFrame(
    "lying",
    input.hand,
    lying ? { left: 10, top: 8, width: 600, height: 118 } : { left: 8, top: 32, width: 344, height: 70 },
  );
  const description = input.compared.map((c) => `${finishText(c.finish)}: ${c.differences.join(", ")}.`).join(" ");
  return picture(
    { width: lying ? 960 : 360, height: (strips.at(-1)?.top ?? 0) + (strips.at(-1)?.height ?? 0) },
    { id, title: CHART.compareTitle, description },
    // The lane is the same in every strip: it is drawn once and shown as often as it is needed.
    el(
      "defs",
      {},
      el("g", { id: `${id}-lane` }, stripGround(input, frame, paint)),
      ...input.compared.map((c, i) => finishTexture(`${id}-finish-${i}`, c.finish, undefined, paint)),
    ),
    ...input.compared.map((c, i) => {
      const { top } = strips[i] as Strip;
      const lane = el("use", { href: `#${id}-lane` }) + stripCourse(c, frame, paint);
      return el("g", { class: "gw-strip", transform: `translate(0 ${top})` }, lane, stripWords(c, lying, `${id}-finish-${i}`, paint));
    }),
  );
}

function stripsOf(compared: readonly ComparedFinish[], lying: boolean): Strip[] {
  let top = 6;
  return compared.map((c) => {
    const height = lying ? Math.max(146, 60 + c.differences.length * 18) : 122 + c.differences.length * 17;
    const made = { top, height };
    top += height;
    return made;
  });
}

/** Lane, oil and today's course. */
function stripGround(input: SmallMultiplesInput, frame: LaneFrame, paint: Paint): string {
  return laneStrip(input.film, frame, paint) + el("g", { opacity: 0.75 }, courseLine(input.today, "other", frame, paint));
}

function stripCourse(compared: ComparedFinish, frame: LaneFrame, paint: Paint): string {
  return courseLine(compared.course, compared.picked ? "pick" : "today", frame, paint);
}

/** The finish as a textured ball and a name, and what it changes. */
function stripWords(compared: ComparedFinish, lying: boolean, textureId: string, paint: Paint): string {
  const [x, y] = lying ? [644, 22] : [18, 13];
  const words = { "font-family": SANS, "font-size": lying ? 13 : 11.5, fill: paint.ink };
  const name = `${finishText(compared.finish)}${compared.picked ? ` · ${CHART.pick}` : ""}`;
  const colour = compared.picked ? paint.accent : paint.ink;
  return [
    texturedBall({ x, y, radius: 11 }, textureId, compared.finish, paint),
    textEl(name, { x: x + 20, y: y + 5, "font-family": SERIF, "font-size": lying ? 17 : 15, "font-weight": 600, fill: colour }),
    ...compared.differences.map((d, i) => textEl(d, { ...words, x: lying ? x - 10 : 8, y: lying ? y + 34 + i * 18 : 122 + i * 17 })),
  ].join("");
}
