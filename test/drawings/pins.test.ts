import { describe, expect, test } from "vitest";
import { carryChart } from "#drawing/carryChart";
import { leavesPicture } from "#drawing/leavesPicture";
import { FILE_PAINT } from "#drawing/paint";
import { sideDiagram } from "#drawing/sideDiagram";
import { assume } from "#engine/assumptions";
import { strikeMap, TYPICAL_QUALITY } from "#engine/pins/carry";
import { hitsAbout } from "#engine/pins/explain";
import { SIDE_IDS } from "#engine/surface/padWork/sides";
import { elementsOf, expectPicture, textsOf } from "./snapshot.ts";

describe("strikes over board and entry angle", () => {
  const carry = strikeMap(assume());
  const hits = hitsAbout({ board: 17, entryDeg: 4, quality: TYPICAL_QUALITY }, { boards: 1, entryDeg: 0.5 });
  const places = (svg: string) => elementsOf(svg, "circle").map((circle) => Number(circle.cx));

  test("draws every hit inside its frame, and contours with their figures", () => {
    const svg = carryChart({ carry, hand: "right", hits });
    expect(places(svg).length).toBeGreaterThan(0.95 * hits.length);
    expect(textsOf(svg)).toEqual(expect.arrayContaining(["40", "80", "90"]));
  });

  test("a right-hander's light hits lie on the right, a left-hander's on the left, as seen from behind", () => {
    const light = [{ board: 14, entryDeg: 4, quality: TYPICAL_QUALITY }];
    const [right, left] = (["right", "left"] as const).map((hand) => places(carryChart({ carry, hand, hits: light }))[0]);
    expect(right).toBeGreaterThan(339);
    expect(left).toBeLessThan(339);
    expect(right + left).toBeCloseTo(58 + 620, 1);
  });

  test("looks as approved", async () => {
    await expectPicture(carryChart({ carry, hand: "right", hits }), "carry-chart");
  });
});

describe("pins that stand, from above", () => {
  const leaves = [
    { leave: "10", share: 0.1 },
    { leave: "2-8-10", share: 0.006 },
  ];

  test("shows the standing pins with their numbers, the far row above, and the shares in 100", () => {
    const svg = leavesPicture({ leaves, other: 0.2 });
    expect(textsOf(svg)).toEqual(expect.arrayContaining(["10", "2", "8", "0.6", "others 20"]));
    const standing = elementsOf(svg, "circle").filter(({ fill }) => fill === FILE_PAINT.ink);
    expect(standing).toHaveLength(4);
    const [ten, , two] = [standing[0], standing[3], standing[1]];
    expect(Number(two.cy)).toBeGreaterThan(Number(ten.cy));
  });

  test("looks as approved", async () => {
    await expectPicture(leavesPicture({ leaves, other: 0.2 }), "leaves");
  });
});

describe("the side of the ball that is worked", () => {
  const holes = (side: (typeof SIDE_IDS)[number]) =>
    elementsOf(sideDiagram({ side, sides: SIDE_IDS, done: [], share: 0, before: null, after: null }, FILE_PAINT), "ellipse");
  const middle = (side: (typeof SIDE_IDS)[number], axis: "cx" | "cy") =>
    holes(side).reduce((sum, hole) => sum + Number(hole[axis]), 0) / holes(side).length;

  test("the grip faces you on its own side; on the opposite one the holes are out of sight", () => {
    expect(holes("grip").filter(({ fill }) => fill !== "none")).toHaveLength(3);
    expect(holes("opposite").filter(({ fill }) => fill !== "none")).toHaveLength(0);
  });

  test("with a side towards you the grip lies where it was turned to (geometry)", () => {
    // The middle of the picture.
    const [half, halfDown] = [360, 280];
    expect(middle("left", "cx")).toBeGreaterThan(half);
    expect(middle("right", "cx")).toBeLessThan(half);
    expect(middle("fingers", "cy")).toBeGreaterThan(halfDown);
    expect(middle("thumb", "cy")).toBeLessThan(halfDown);
  });
});
