import { finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import { type Label, type Offer, placeLabels } from "./labelPlaces.ts";
import { type Paint, SANS, SERIF } from "./paint.ts";
import type { Ground, PlateauInput, PlateauStep, Step } from "./plateauInput.ts";
import { el, type Point, textEl } from "./svg.ts";
import { texturedBall } from "./texture.ts";

/** The finishes that are much the same, bracketed. */
export function flat(input: PlateauInput, g: Ground, paint: Paint): string {
  const [first, last] = [input.plateau[0], input.plateau.at(-1)];
  if (first === undefined || last === undefined || input.plateau.length < 2) return "";
  const [from, to] = [g.x(first) - 14, g.x(last) + 14];
  const y = g.top - 24;
  return (
    el("path", { class: "gw-flat", d: `M${from},${y + 6}V${y}H${to}V${y + 6}`, fill: "none", stroke: paint.ink, "stroke-width": 1 }) +
    textEl(CHART.plateau, {
      x: (from + to) / 2,
      y: y - 4,
      "text-anchor": "middle",
      "font-family": SERIF,
      "font-style": "italic",
      "font-size": g.font,
      fill: paint.ink,
    })
  );
}

/** Strokes down the steep side, as a chart draws a cliff. */
export function cliffMarks(input: PlateauInput, known: readonly Step[], g: Ground, paint: Paint): string {
  const edge = input.cliff === "smoother" ? input.plateau.at(-1) : input.cliff === "duller" ? input.plateau[0] : undefined;
  const index = known.findIndex((s) => finishText(s.finish) === edge);
  const [a, b] = [known[index], known[index + (input.cliff === "smoother" ? 1 : -1)]];
  if (a === undefined || b === undefined) return "";
  const [ax, ay, bx, by] = [g.x(finishText(a.finish)), g.y(a.lossPer100.value), g.x(finishText(b.finish)), g.y(b.lossPer100.value)];
  const strokes = [0.15, 0.3, 0.45, 0.6, 0.75, 0.9].map((t) => `M${ax + t * (bx - ax)},${ay + t * (by - ay)}v${13 - 5 * t}`);
  const { at, anchor } = cliffWords([(ax + bx) / 2, (ay + by) / 2], bx > ax ? "start" : "end", input, known, g);
  return (
    el("path", { class: "gw-cliff", d: strokes.join(""), stroke: paint.ink, "stroke-width": 1.2 }) +
    textEl(CHART.cliff, {
      x: at[0],
      y: at[1],
      "text-anchor": anchor,
      "font-family": SERIF,
      "font-style": "italic",
      "font-size": g.font,
      fill: paint.ink,
      stroke: paint.paper,
      "stroke-width": 3,
      "paint-order": "stroke",
    })
  );
}

/** Where the cliff's words stand: by it, where they are clear of the figures and of the ground line, else below or above all of that. */
function cliffWords([x, y]: Point, anchor: "start" | "end", input: PlateauInput, known: readonly Step[], g: Ground): Offer {
  const ground = known.map((step): Point => [g.x(finishText(step.finish)), g.y(step.lossPer100.value)]);
  const figures = known.map(
    ({ lossPer100 }, i): Label => ({
      words: CHART.loss(lossPer100.value),
      offers: [{ at: [ground[i][0], ground[i][1] - 8], anchor: "middle" }],
    }),
  );
  const aside = x + (anchor === "start" ? 8 : -8);
  const offers = [y - 6, y + 28, g.bottom - 4, g.top - 28].map((down): Offer => ({ at: [aside, down], anchor }));
  const line = ground.slice(1).flatMap(([toX, toY], i) =>
    Array.from({ length: 9 }, (_, k): Point => {
      const [fromX, fromY] = ground[i];
      return [fromX + (k / 8) * (toX - fromX), fromY + (k / 8) * (toY - fromY)];
    }),
  );
  const pick = known.findIndex(({ finish }) => finishText(finish) === input.pick);
  const pennant =
    pick < 0
      ? []
      : [8, 16, 24, 32].flatMap((down): Point[] => [0, 8, 17].map((right) => [ground[pick][0] + right, ground[pick][1] + down]));
  const room = { left: 2, right: g.right, top: 18, bottom: g.bottom };
  return placeLabels([...figures, { words: CHART.cliff, offers }], room, [...line, ...pennant], g.font)[figures.length];
}

export function stepMark(step: PlateauStep, picked: boolean, textureId: string, g: Ground, paint: Paint): string {
  const name = finishText(step.finish);
  const x = g.x(name);
  const colour = picked ? paint.accent : paint.ink;
  const label = { x, "text-anchor": "middle", "font-family": SANS, "font-size": g.font, fill: colour };
  const [number, ...over] = name.split(" ");
  const under =
    texturedBall({ x, y: g.bottom + 18, radius: 9 }, textureId, step.finish, paint) +
    textEl(number ?? name, { ...label, y: g.bottom + 42, "font-weight": picked ? 650 : 400 }) +
    textEl(over.join(" "), { ...label, y: g.bottom + 55, "font-size": g.font * 0.9 });
  if (step.lossPer100 === null) return under + textEl(CHART.noLine, { ...label, y: (g.top + g.bottom) / 2, "font-style": "italic" });
  const y = g.y(step.lossPer100.value);
  const mark = picked
    ? el("path", {
        class: "gw-pennant",
        d: `M${x},${y}V${y + 34}M${x},${y + 16}l17,8.5l-17,8.5z`,
        fill: colour,
        stroke: colour,
        "stroke-width": 2,
      })
    : el("circle", { cx: x, cy: y, r: 3.6, fill: paint.paper, stroke: paint.ink, "stroke-width": 1.6 });
  return (
    mark +
    textEl(CHART.loss(step.lossPer100.value), {
      ...label,
      y: y - 8,
      fill: colour,
      "font-weight": picked ? 650 : 400,
      stroke: paint.paper,
      "stroke-width": 3,
      "paint-order": "stroke",
    }) +
    under
  );
}

export function directions(g: Ground, paint: Paint): string {
  const style = { y: g.bottom + 74, "font-family": SERIF, "font-style": "italic", "font-size": g.font, fill: paint.faint };
  return (
    textEl(`← ${CHART.duller}`, { x: g.left, ...style }) + textEl(`${CHART.smoother} →`, { x: g.right, "text-anchor": "end", ...style })
  );
}
