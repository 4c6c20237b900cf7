import { ballGlobe } from "#drawing/ballGlobe";
import { PAGE_PAINT } from "#drawing/paint";
import { PLAIN_QUESTION, padWorkOf } from "#engine/surface/padWork/padWork";
import { PAD_WORK } from "#words/en/padWork";
import type { PadWorkDrawn, PadWorkWanted } from "./protocol.ts";

/** The work that a ball has received: as a flat picture in both layouts, and by place for the ball in space. */
export function drawPadWork({ name, diameterIn, stages }: PadWorkWanted): PadWorkDrawn {
  const { axes } = PLAIN_QUESTION;
  const work = padWorkOf({ ...PLAIN_QUESTION, diameterIn, stages });
  const { received, cells, evenness, sides } = work;
  const mean = received.work.reduce((sum, one) => sum + one, 0) / cells.count;
  const globe = (layout: "lying" | "upright") => ballGlobe({ name, work, axes }, { layout, paint: PAGE_PAINT, id: `globe-${layout}` });
  return {
    flat: { lying: globe("lying"), upright: globe("upright") },
    cells: cells.count,
    overMean: Array.from(received.work, (one) => (mean === 0 ? 0 : one / mean)),
    seconds: sides.map(({ side, seconds }) => ({ side, seconds })),
    evenness: PAD_WORK.evenness(evenness),
  };
}
