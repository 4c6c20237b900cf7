import { describe, expect, test } from "vitest";
import { markDisc } from "#drawing/markDisc";
import { FILE_PAINT } from "#drawing/paint";
import { elementsOf, expectPicture, textsOf } from "./snapshot.ts";

const MARKS = [
  { right: -0.5, up: -0.5 },
  { right: 0, up: 0.25 },
];

describe("the ball's disc with a mark", () => {
  test("right lies right of the middle, up above it; the marks bear the order of the pictures", () => {
    const svg = markDisc(MARKS, [], "disc", FILE_PAINT);
    const places = elementsOf(svg, "circle").filter(({ fill }) => fill === FILE_PAINT.accent);
    const [first, second] = places.map(({ cx, cy }) => [Number(cx), Number(cy)]);
    expect(first[0]).toBeLessThan(second[0]);
    expect(first[1]).toBeGreaterThan(second[1]);
    expect(textsOf(svg)).toEqual(expect.arrayContaining(["1", "2"]));
  });

  test("a mark that was read beyond the rim is drawn on it", () => {
    const disc = elementsOf(markDisc([], [], "disc", FILE_PAINT), "circle").map(({ r }) => Number(r));
    const [mark] = elementsOf(markDisc([{ right: 3, up: 4 }], [], "disc", FILE_PAINT), "circle").filter(
      ({ fill }) => fill === FILE_PAINT.accent,
    );
    // 3 and 4 are 5 radii away, in the direction 0.6, 0.8.
    expect(Number(mark.cx) - 100).toBeCloseTo(0.6 * Math.max(...disc), 1);
    expect(100 - Number(mark.cy)).toBeCloseTo(0.8 * Math.max(...disc), 1);
  });

  test("looks as approved", async () => {
    await expectPicture(markDisc(MARKS, [{ right: 0.4, up: 0.1 }], "disc", FILE_PAINT), "mark-disc");
  });
});
