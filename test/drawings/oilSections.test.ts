import { describe, expect, test } from "vitest";
import { type OilSection, oilSections } from "#drawing/oilSections";
import { FILE_PAINT, inFileColours, PAGE_PAINT } from "#drawing/paint";
import { elementsOf, expectPicture, pointsOf, textsOf } from "./snapshot.ts";

/** A wedge of 8 µm over board 20, its half further down, and a strip that only lies on the bowler's right. */
const SECTIONS: readonly OilSection[] = [
  { ft: 2, um: Array.from({ length: 39 }, (_, i) => 8 * (1 - Math.abs(i - 19) / 19)) },
  { ft: 20, um: Array.from({ length: 39 }, (_, i) => 4 * (1 - Math.abs(i - 19) / 19)) },
  { ft: 38, um: Array.from({ length: 39 }, (_, i) => (i < 10 ? 4 : 0)) },
];

const edges = (svg: string) =>
  elementsOf(svg, "path")
    .filter((path) => path.class === "gw-film")
    .map(({ d }) => pointsOf(d));

describe("the oil across the lane", () => {
  test("board 1 lies at the right, whole boards apart, and every section has the same scale of depth", () => {
    const [first, second, third] = edges(oilSections(SECTIONS));
    expect(first).toHaveLength(41);
    const lane = first[0][1];
    const depth = (points: typeof first, board: number) => lane - points[board][1];
    expect(depth(second, 20)).toBeCloseTo(depth(first, 20) / 2, 1);
    expect(depth(third, 5)).toBeCloseTo(depth(second, 20), 1);
    expect(depth(third, 11)).toBe(0);
    expect(third[5][0]).toBeGreaterThan(third[30][0]);
    expect(first[10][0] - first[11][0]).toBeCloseTo(first[30][0] - first[31][0], 0);
  });

  test("says where each lies and how deep it is", () => {
    expect(textsOf(oilSections(SECTIONS))).toEqual(expect.arrayContaining(["2 ft", "deepest 8.0 µm", "38 ft", "deepest 4.0 µm"]));
  });

  test("a dry lane is drawn dry", () => {
    const svg = oilSections([{ ft: 30, um: Array.from({ length: 39 }, () => 0) }]);
    expect(svg).not.toContain("NaN");
    expect(new Set(edges(svg)[0].map(([, y]) => y)).size).toBe(1);
  });

  test("drawn for the page it can stand by itself", () => {
    const page = oilSections(SECTIONS, { paint: PAGE_PAINT });
    expect(page).toContain("var(");
    expect(inFileColours(page)).toBe(oilSections(SECTIONS, { paint: FILE_PAINT }));
  });

  test.each(["lying", "upright"] as const)("looks as approved, %s", async (layout) => {
    await expectPicture(oilSections(SECTIONS, { layout }), `sections-${layout}`);
  });
});
