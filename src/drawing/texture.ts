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
  const radius = 0.2 + 1.05 * rough ** 0.75;
  const cover = (0.06 + 0.26 * rough ** 0.6) * (polished ? 0.35 : 1);
  return { radius, grains: Math.max(3, Math.round((cover * TILE * TILE) / (Math.PI * radius * radius))) };
}

/**
 * Grains one to a cell of a square net, each shaken out of the middle of its cell: no clumps, no lines, and the tile
 * fits itself at every edge. The shaking is a fixed hash of the cell, so a finish looks the same everywhere.
 */
function grainsAt(count: number): [number, number][] {
  const side = Math.max(2, Math.round(Math.sqrt(count)));
  const cell = TILE / side;
  return Array.from({ length: side * side }, (_, i) => {
    const [column, row] = [i % side, Math.floor(i / side)];
    // Every other row stands half a cell aside, which hides the net.
    return [(column + 0.5 + (row % 2) / 2 + SHAKE * shaken(2 * i)) * cell, (row + 0.5 + SHAKE * shaken(2 * i + 1)) * cell];
  });
}

/** How far a grain may leave the middle of its cell, cells. */
const SHAKE = 0.36;

/** A number from −1 to 1 that looks random, the same for the same key (a 32-bit mixer after T. Wang). */
function shaken(key: number): number {
  let h = Math.imul(key + 0x9e37, 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 2147483648 - 1;
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

/**
 * A ball wearing the texture, centred at (x, y). The pattern named `textureId` must be in the same picture. The ball is
 * one tile large whatever its radius, so that no seam of the pattern crosses it and a finish looks alike at every size.
 */
export function texturedBall(
  at: { x: number; y: number; radius: number },
  textureId: string,
  finish: Finish,
  paint: Paint = FILE_PAINT,
): string {
  const [middle, r] = [TILE / 2, TILE / 2 - 1];
  const scale = at.radius / r;
  const gloss = finish.polished ? 1 : Math.max(0, 0.55 - effectiveRaUm(finish));
  const place = `translate(${round(at.x - middle * scale)} ${round(at.y - middle * scale)}) scale(${round(scale)})`;
  const ball = { cx: middle, cy: middle, r };
  const shine = { cx: round(middle - r * 0.3), cy: round(middle - r * 0.36) };
  return el(
    "g",
    { transform: place },
    el("circle", { ...ball, fill: paint.lane }),
    el("circle", { ...ball, fill: paint.ink, "fill-opacity": 0.16 }),
    el("circle", { ...ball, fill: `url(#${textureId})` }),
    el("ellipse", {
      ...shine,
      rx: r * (finish.polished ? 0.36 : 0.42),
      ry: r * 0.22,
      transform: `rotate(-35 ${shine.cx} ${shine.cy})`,
      fill: paint.shine,
      "fill-opacity": gloss,
    }),
    el("circle", { ...ball, fill: "none", stroke: paint.ink, "stroke-width": 1 / scale }),
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
