import { describe, expect, test } from "vitest";
import { laneChart } from "#drawing/laneChart";
import { DRAWN_FT, laneFrame, stretch } from "#drawing/laneFrame";
import { oilLevels } from "#drawing/oilContours";
import { PAGE_PAINT } from "#drawing/paint";
import { brokenCourse, wedgeFilm } from "./given.ts";
import { elementsOf, expectPicture, pointsOf, textsOf } from "./snapshot.ts";

const FINISH = { number: 2000, polished: false };
const chart = (hand: "right" | "left") => ({
  film: wedgeFilm(),
  hand,
  title: "Wedge of oil, a course with a corner",
  courses: [
    { name: "2000 · today", finish: FINISH, course: brokenCourse(hand), emphasis: "today" as const },
    { name: "3000 + polish · pick", finish: { number: 3000, polished: true }, course: brokenCourse(hand), emphasis: "pick" as const },
  ],
});

/** Where the lying lane stands in the picture: the border's light ground. */
function laneBox(svg: string) {
  const ground = elementsOf(svg, "rect").filter((r) => r.fill === "#fdfbf5" && r["stroke-width"] === undefined)[0];
  return { x: Number(ground.x), y: Number(ground.y), width: Number(ground.width), height: Number(ground.height) };
}

/** Where a line meets a distance down the lane, in picture units across. */
function crossings(line: readonly (readonly [number, number])[], x: number): number[] {
  return line.slice(1).flatMap(([bx, by], i) => {
    const [ax, ay] = line[i];
    return (ax - x) * (bx - x) < 0 ? [ay + ((x - ax) / (bx - ax)) * (by - ay)] : [];
  });
}

describe("the lane chart", () => {
  test("a right-hander's course passes through its boards at their feet", () => {
    const svg = laneChart(chart("right"));
    const box = laneBox(svg);
    const course = elementsOf(svg, "path")
      .filter((p) => p["data-phase"] !== undefined)
      .slice(0, 3)
      .flatMap((p) => pointsOf(p.d));
    const at = (ft: number) => course.find(([x]) => Math.abs(x - (box.x + (ft / DRAWN_FT) * box.width)) < 0.06)?.[1] ?? Number.NaN;
    // Board b from the right edge lies (b − 0.5) boards above the lower border.
    const y = (board: number) => box.y + box.height - ((board - 0.5) / 39) * box.height;
    expect(at(0)).toBeCloseTo(y(19), 0);
    expect(at(20)).toBeCloseTo(y(13), 0);
    expect(at(40)).toBeCloseTo(y(7), 0);
    expect(at(59.5)).toBeCloseTo(y(17.5), 0);
  });

  test("a left-hander's course is the mirror image across the lane", () => {
    const [right, left] = (["right", "left"] as const).map((hand) => laneChart(chart(hand)));
    const points = (svg: string) =>
      elementsOf(svg, "path")
        .filter((p) => p["data-phase"] !== undefined)
        .flatMap((p) => pointsOf(p.d));
    const box = laneBox(right);
    const middle = box.y + box.height / 2;
    const mirrored = points(left).map(([x, y]) => [x, 2 * middle - y]);
    points(right).forEach(([x, y], i) => {
      expect(mirrored[i][0]).toBeCloseTo(x, 1);
      expect(Math.abs(mirrored[i][1] - y)).toBeLessThan(0.11);
    });
  });

  test("contours lie where the film has their depth", () => {
    const frame = laneFrame("lying", "right", { left: 0, top: 0, width: 636, height: 390 });
    for (const level of oilLevels(wedgeFilm(), frame)) {
      // Across the lane the wedge is straight: depth u is met 19·(1 − u/4) boards from the middle.
      const boards = 19 * (1 - level.um / 4);
      for (const ft of [3, 20, 38]) {
        const met = level.lines.flatMap((line) => crossings(line, ft * frame.perFt));
        expect(met).toHaveLength(2);
        for (const y of met) expect(Math.abs(y - 195) / frame.perBoard).toBeCloseTo(boards, 1);
      }
    }
  });

  test("no contour runs along the edge of the lane or the foul line", () => {
    const frame = laneFrame("lying", "right", { left: 0, top: 0, width: 636, height: 390 });
    for (const level of oilLevels(wedgeFilm(), frame)) {
      for (const line of level.lines) {
        line.slice(1).forEach(([x, y], i) => {
          const [px, py] = line[i];
          expect((x === 0 && px === 0) || (y === 0 && py === 0) || (y === 390 && py === 390)).toBe(false);
        });
      }
    }
  });

  test("phases are told apart by their stroke alone", () => {
    const strokes = elementsOf(laneChart(chart("right")), "path")
      .filter((p) => p["data-phase"] !== undefined)
      .slice(0, 3)
      .map((p) => [p["data-phase"], p["stroke-dasharray"] !== undefined, Number(p["stroke-width"]) > 3]);
    expect(strokes).toEqual([
      ["skid", true, false],
      ["hook", false, true],
      ["roll", false, false],
    ]);
  });

  test("says how much the lane is stretched across", () => {
    const svg = laneChart(chart("right"));
    const box = laneBox(svg);
    // 41.5 in across against 12 in a foot along.
    const times = box.height / 41.5 / (box.width / DRAWN_FT / 12);
    expect(textsOf(svg).join(" ")).toContain(`${times.toFixed(1)} times as large`);
    expect(stretch(laneFrame("lying", "right", { left: 0, top: 0, width: box.width, height: box.height }))).toBeCloseTo(times, 6);
  });

  test("carries feet and boards at hook, breakpoint and roll, a name and a description", () => {
    const svg = laneChart(chart("right"), { id: "x" });
    const texts = textsOf(svg);
    expect(texts).toContain("hook 35.0 ft · board 8.5");
    expect(texts).toContain("breakpoint 40.0 ft · board 7.0");
    expect(texts.some((t) => t.startsWith("roll 52.0 ft · board 13."))).toBe(true);
    expect(texts).toContain("entry 3.3°");
    expect(svg).toMatch(/^<svg[^>]* role="img" aria-labelledby="x-title x-desc"/);
    expect(svg).toContain('<title id="x-title">Wedge of oil, a course with a corner</title>');
    expect(/<desc id="x-desc">([^<]*)/.exec(svg)?.[1]).toContain("3000 + polish · pick: board 18.9, hook 35.0 ft");
  });

  test("a name that somebody typed cannot become markup", () => {
    const svg = laneChart({ ...chart("right"), title: "<script>alert(1)</script>" });
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&lt;script&gt;");
  });

  test("on the page every colour is a variable with the file's colour to fall back on", () => {
    const svg = laneChart(chart("right"), { paint: PAGE_PAINT });
    expect(svg.replace(/var\(--gw-\w+, #[0-9a-f]{6}\)/g, "")).not.toMatch(/#[0-9a-f]{6}/);
  });

  test.each(["lying", "upright"] as const)(
    "every text of the %s chart is legible: at least 9 points where the narrow one is shown 360 wide",
    (layout) => {
      const sizes = elementsOf(laneChart(chart("right"), { layout }), "text").map((t) => Number(t["font-size"]));
      expect(Math.min(...sizes)).toBeGreaterThanOrEqual(9);
    },
  );

  test.each([
    ["lying", "right"],
    ["upright", "right"],
    ["lying", "left"],
  ] as const)("looks as approved, %s, %s-handed", async (layout, hand) => {
    await expectPicture(laneChart(chart(hand), { layout }), `lane-${layout}-${hand}`);
  });
});
