import type { Point } from "./svg.ts";

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Words that want to stand beside a point, with the places they may take, the best first. */
export interface Label {
  readonly words: string;
  readonly offers: readonly Offer[];
}

export interface Offer {
  /** Base line of the words, and which end of them is there. */
  readonly at: Point;
  readonly anchor: "start" | "middle" | "end";
}

export interface PlacedLabel extends Offer {
  readonly words: string;
  readonly box: Box;
}

/** Sans letters are a little over half as wide as high: enough to tell whether words would meet. */
const LETTER_WIDTH = 0.54;

/**
 * Puts each label on the first of its places that is free: inside the room, off the labels placed before it, and on as
 * few of the `busy` points as can be. Meeting other words is far worse than lying on a line, leaving the room is worst.
 */
export function placeLabels(labels: readonly Label[], room: Box, busy: readonly Point[], fontSize: number): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const { words, offers } of labels) {
    let best: PlacedLabel | null = null;
    let leastHarm = Number.POSITIVE_INFINITY;
    for (const [rank, offer] of offers.entries()) {
      const box = boxOf(words, offer, fontSize);
      const harm =
        1000 * (inside(box, room) ? 0 : 1) +
        100 * placed.filter((other) => meet(other.box, box)).length +
        3 * busy.filter((p) => holds(box, p)).length +
        rank * 0.5;
      if (harm < leastHarm) [best, leastHarm] = [{ ...offer, words, box }, harm];
    }
    if (best !== null) placed.push(best);
  }
  return placed;
}

function boxOf(words: string, { at: [x, y], anchor }: Offer, fontSize: number): Box {
  const width = words.length * fontSize * LETTER_WIDTH;
  const left = anchor === "start" ? x : anchor === "middle" ? x - width / 2 : x - width;
  return { left: left - 2, right: left + width + 2, top: y - fontSize * 0.95, bottom: y + fontSize * 0.3 };
}

/** Whether a point lies in a box, with a margin around it. */
export function holds(box: Box, [x, y]: Point, margin = 0): boolean {
  return x > box.left - margin && x < box.right + margin && y > box.top - margin && y < box.bottom + margin;
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function inside(box: Box, room: Box): boolean {
  return box.left >= room.left && box.right <= room.right && box.top >= room.top && box.bottom <= room.bottom;
}
