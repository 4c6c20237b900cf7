import { parseLeave, pinsOf } from "#engine/pins/leave";
import { PIN_SPOTS_IN } from "#engine/pins/spots";
import { CARRY } from "#words/en/carry";
import { FILE_PAINT, type Paint, SANS, SERIF } from "./paint.ts";
import { el, picture, textEl } from "./svg.ts";

export interface LeavesInput {
  /** Likeliest first; leaves as `2-8-10`, shares 0–1. */
  readonly leaves: readonly { readonly leave: string; readonly share: number }[];
  readonly other: number;
}

const RACK = 96;
const A_ROW = 6;
const HEAD = 34;
const TALL = 112;
/** Inches to picture units inside a small rack, and the pins' radius there. */
const SCALE = 1.9;
const PIN = 7.5;
/** What would be written as nought, in 100. */
const LEAST_SHOWN = 0.05;

/** The pins that stand, from above, head pin nearest: one small rack a leave with its share in 100. */
export function leavesPicture({ leaves, other }: LeavesInput, paint: Paint = FILE_PAINT, id = "leaves"): string {
  const columns = Math.max(1, Math.min(A_ROW, leaves.length));
  const rows = Math.max(1, Math.ceil(leaves.length / columns));
  const [width, height] = [columns * RACK + 16, HEAD + rows * TALL + 20];
  const hasOther = 100 * other >= LEAST_SHOWN;
  const said = [
    ...leaves.map(({ leave, share }) => CARRY.leaveRow(leave, 100 * share)),
    ...(hasOther ? [CARRY.leaveRow(CARRY.other, 100 * other)] : []),
  ];
  return picture(
    { width, height },
    { id, title: CARRY.leavesTitle, description: CARRY.leavesDescription(said) },
    el("rect", { width, height, fill: paint.paper }),
    textEl(CARRY.leavesTitle, { x: 12, y: 22, "font-family": SERIF, "font-size": 15, fill: paint.ink }),
    ...leaves.map(({ leave, share }, i) => smallRack(leave, share, (i % columns) * RACK + 8, HEAD + Math.floor(i / columns) * TALL, paint)),
    hasOther
      ? textEl(`${CARRY.other} ${CARRY.share(100 * other)}`, {
          x: 12,
          y: height - 8,
          "font-family": SANS,
          "font-size": 12,
          fill: paint.faint,
        })
      : "",
  );
}

function smallRack(leave: string, share: number, left: number, top: number, paint: Paint): string {
  const standing = new Set(pinsOf(parseLeave(leave, "leave")));
  const [middle, front] = [left + RACK / 2, top + 74];
  const pins = PIN_SPOTS_IN.map(([x, y], i) => {
    const [cx, cy] = [middle + x * SCALE, front - y * SCALE];
    const isUp = standing.has(i + 1);
    const ring = el("circle", {
      cx,
      cy,
      r: isUp ? PIN : 2,
      fill: isUp ? paint.ink : paint.paper,
      stroke: isUp ? paint.ink : paint.hair,
      "stroke-width": 1,
    });
    const number = textEl(String(i + 1), {
      x: cx,
      y: cy + 3.5,
      "text-anchor": "middle",
      "font-family": SANS,
      "font-size": 9.5,
      fill: paint.paper,
    });
    return isUp ? ring + number : ring;
  });
  return el(
    "g",
    { class: "gw-leave" },
    ...pins,
    textEl(CARRY.share(100 * share), {
      x: middle,
      y: top + 100,
      "text-anchor": "middle",
      "font-family": SANS,
      "font-size": 13,
      fill: paint.ink,
    }),
  );
}
