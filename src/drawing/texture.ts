import { effectiveRaUm, type Finish, finishText } from "#engine/surface/finish";
import { CHART } from "#words/en/charts";
import { FILE_PAINT, type Paint } from "./paint.ts";
import { el, picture, round } from "./svg.ts";

/** Side of the repeating tile, picture units. */
const TILE = 32;
/** The roughest surface that is drawn, µm; everything else is drawn in proportion to it. */
const COARSEST_UM = 1.2;

/** How a surface of this roughness is stippled: coarse grains far apart, or fine ones close together, thinning out towards a shine. */
export function stippleOf(raUm: number, polished: boolean): { readonly radius: number; readonly grains: number } {
  const rough = Math.min(1, Math.max(0, raUm) / COARSEST_UM);
  const radius = 0.26 + 1.34 * rough ** 0.75;
  const cover = (0.06 + 0.26 * rough ** 0.6) * (polished ? 0.35 : 1);
  return { radius, grains: Math.max(3, Math.round((cover * TILE * TILE) / (Math.PI * radius * radius))) };
}

/**
 * Grains spread without clumps and without a lattice: of a dozen places tried for each grain the one furthest from
 * its neighbours is taken (best candidate sampling, D. Mitchell, SIGGRAPH 1991). The places tried come from a fixed
 * congruential sequence, so a finish looks the same everywhere.
 */
function grainsAt(count: number): [number, number][] {
  let state = 1;
  const next = (): number => {
    state = (state * 48271) % 2147483647;
    return (state / 2147483647) * TILE;
  };
  const apart = (a: number, b: number): number => Math.min(Math.abs(a - b), TILE - Math.abs(a - b));
  const placed: [number, number][] = [];
  while (placed.length < count) {
    let best: [number, number] = [next(), next()];
    let bestGap = -1;
    for (let tried = 0; tried < 12; tried++) {
      const candidate: [number, number] = [next(), next()];
      const gap = placed.reduce((least, p) => Math.min(least, Math.hypot(apart(p[0], candidate[0]), apart(p[1], candidate[1]))), TILE);
      if (gap > bestGap) [best, bestGap] = [candidate, gap];
    }
    placed.push(best);
  }
  return placed;
}

/**
 * A finish as a texture: an SVG pattern named `id`, to be used as `fill="url(#id)"`.
 * @param raUm roughness that the stipple shows, µm, ≥ 0; without it the finish's own effective roughness.
 */
export function finishTexture(id: string, finish: Finish, raUm: number = effectiveRaUm(finish), paint: Paint = FILE_PAINT): string {
  const { radius, grains } = stippleOf(raUm, finish.polished);
  // A grain on the tile's edge is drawn on both sides of it, or the seam would show.
  const wrapped = grainsAt(grains).flatMap(([x, y]) =>
    [-TILE, 0, TILE]
      .flatMap((dx) => [-TILE, 0, TILE].map((dy): [number, number] => [x + dx, y + dy]))
      .filter(([px, py]) => px > -radius && px < TILE + radius && py > -radius && py < TILE + radius),
  );
  const d = wrapped.map(([x, y]) => `M${round(x)},${round(y)}h0`).join("");
  return el(
    "pattern",
    { id, width: TILE, height: TILE, patternUnits: "userSpaceOnUse" },
    el("path", { d, fill: "none", stroke: paint.ink, "stroke-width": 2 * radius, "stroke-linecap": "round" }),
  );
}

/** A ball wearing the texture, centred at (x, y). The pattern named `textureId` must be in the same picture. */
export function texturedBall(
  at: { x: number; y: number; radius: number },
  textureId: string,
  finish: Finish,
  paint: Paint = FILE_PAINT,
): string {
  const { x, y, radius } = at;
  const gloss = finish.polished ? 1 : Math.max(0, 0.55 - effectiveRaUm(finish));
  return el(
    "g",
    {},
    el("circle", { cx: x, cy: y, r: radius, fill: paint.lane }),
    el("circle", { cx: x, cy: y, r: radius, fill: paint.ink, "fill-opacity": 0.16 }),
    el("circle", { cx: x, cy: y, r: radius, fill: `url(#${textureId})` }),
    el("ellipse", {
      cx: x - radius * 0.3,
      cy: y - radius * 0.36,
      rx: radius * (finish.polished ? 0.36 : 0.42),
      ry: radius * 0.22,
      transform: `rotate(-35 ${round(x - radius * 0.3)} ${round(y - radius * 0.36)})`,
      fill: paint.shine,
      "fill-opacity": gloss,
    }),
    el("circle", { cx: x, cy: y, r: radius, fill: "none", stroke: paint.ink, "stroke-width": 1 }),
  );
}

/** The texture alone as a small picture, for lists. @param id unique in the page. */
export function textureSwatch(id: string, finish: Finish, size: number, paint: Paint = FILE_PAINT): string {
  const words = CHART.textureOf(finishText(finish));
  return picture(
    { width: size, height: size },
    { id, title: words, description: words },
    el("defs", {}, finishTexture(`${id}-fill`, finish, effectiveRaUm(finish), paint)),
    texturedBall({ x: size / 2, y: size / 2, radius: size / 2 - 1 }, `${id}-fill`, finish, paint),
  );
}
