import { uniformSource } from "../../random.ts";
import { DEGREE, INCH } from "../../units.ts";
import { aboutAxis, cross, rotate, turnBetween, type Vector } from "../../vector.ts";
import { FORCES } from "../cut.ts";
import type { Cells } from "./cells.ts";
import type { HandStage, SideWork } from "./padStage.ts";
import { type Received, receive } from "./received.ts";
import { padAngle } from "./sideProfile.ts";

/** Strokes drawn for one side at most; where there are more in truth each drawn one stands for several. */
const MOST_STROKES = 200;
/** Places of the pad along its own width. */
const PLACES_A_PAD = 8;

/**
 * One side by hand: strokes along great circles, their middles even over the patch, their directions even all round, drawn from the seed.
 * A pad held still by hand does no work in this model, which counts way: pressing in one place is a small patch with short strokes.
 */
export function addHandSide(
  into: Received,
  cells: Cells,
  axis: Vector,
  stage: HandStage,
  work: SideWork,
  ball: { readonly diameterIn: number; readonly umPerWork: number; readonly seed: number },
): void {
  const radius = (ball.diameterIn / 2) * INCH;
  const pad = padAngle(stage.padDiameterIn, ball.diameterIn);
  const length = stage.strokeDeg * DEGREE;
  const inTruth = (work.seconds * stage.strokeSpeed) / (length * radius);
  const strokes = Math.min(MOST_STROKES, Math.ceil(inTruth));
  if (strokes === 0) return;
  const places = Math.max(2, Math.ceil((PLACES_A_PAD * length) / (2 * pad)));
  const padArea = 2 * Math.PI * radius * radius * (1 - Math.cos(pad));
  const perPlace = ((FORCES[work.force] / padArea) * length * radius * (inTruth / strokes)) / places;
  const uniform = uniformSource(ball.seed);
  const toSide = turnBetween([0, 0, 1], axis);
  const flat = Float64Array.from(cells.at.flat());
  for (let stroke = 0; stroke < strokes; stroke++) {
    const { middle, pole } = strokeOver(stage.patchDeg * DEGREE, uniform);
    const start = rotate(toSide, middle);
    const turn = rotate(toSide, pole);
    for (let place = 0; place < places; place++) {
      const along = ((place + 0.5) / places - 0.5) * length;
      addPlace(into, cells, flat, rotate(aboutAxis(turn, along), start), turn, Math.cos(pad), perPlace, ball.umPerWork);
    }
  }
}

/** A stroke's middle, even by area over a cap about z, and the pole of its great circle. */
function strokeOver(patch: number, uniform: () => number): { readonly middle: Vector; readonly pole: Vector } {
  const z = 1 - uniform() * (1 - Math.cos(patch));
  const ring = Math.sqrt(Math.max(0, 1 - z * z));
  const round = 2 * Math.PI * uniform();
  const middle: Vector = [ring * Math.cos(round), ring * Math.sin(round), z];
  const sideways = cross(Math.abs(z) < 0.9 ? [0, 0, 1] : [1, 0, 0], middle);
  const size = Math.hypot(...sideways);
  const level: Vector = [sideways[0] / size, sideways[1] / size, sideways[2] / size];
  return { middle, pole: rotate(aboutAxis(middle, Math.PI * uniform()), level) };
}

/** @param flat the cells' coordinates in a row: this loop runs a hundred million times, and tuples would make it three times as long */
function addPlace(
  into: Received,
  cells: Cells,
  flat: Float64Array,
  pad: Vector,
  pole: Vector,
  edge: number,
  work: number,
  umPerWork: number,
): void {
  const [px, py, pz] = pad;
  for (let i = 0; i < cells.count; i++) {
    const x = flat[3 * i];
    const y = flat[3 * i + 1];
    const z = flat[3 * i + 2];
    if (px * x + py * y + pz * z < edge) continue;
    receive(into, cells, i, work, umPerWork, pole[1] * z - pole[2] * y, pole[2] * x - pole[0] * z, pole[0] * y - pole[1] * x);
  }
}
