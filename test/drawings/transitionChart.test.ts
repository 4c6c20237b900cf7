import { describe, expect, test } from "vitest";
import { type LaneMoment, transitionChart } from "#drawing/transitionChart";
import { wedgeFilm } from "./given.ts";
import { elementsOf, expectPicture, pointsOf, textsOf } from "./snapshot.ts";

const straightAt = (board: number, hand: "right" | "left") => ({ hand, boards: Array.from({ length: 31 }, () => board) });
const MOMENTS: readonly LaneMoment[] = ["As laid", "After game 1"].map((title, i) => ({
  title,
  film: wedgeFilm(),
  says: [`${68 * i} shots on the lane`, "25.1 mL left, 0.0 mL taken"],
  paths: [straightAt(10, "right"), straightAt(10, "left"), straightAt(30, "right")],
}));

describe("the oil in play", () => {
  test("a left-hander's board 10 lies where a right-hander's 30 does, and the first path is the strongest", () => {
    const paths = elementsOf(transitionChart({ hand: "right", moments: MOMENTS.slice(0, 1) }), "path").filter(
      ({ fill }) => fill === "none",
    );
    const lines = paths.filter((path) => pointsOf(path.d ?? "").length === 31);
    expect(lines).toHaveLength(3);
    const [third, second, first] = lines;
    expect(second.d).toBe(third.d);
    expect(first.d).not.toBe(third.d);
    expect(Number(first["stroke-width"])).toBeGreaterThan(2 * Number(second["stroke-width"]));
  });

  test("every moment bears its name and what is to be read", () => {
    const texts = textsOf(transitionChart({ hand: "right", moments: MOMENTS }));
    expect(texts).toEqual(expect.arrayContaining(["As laid", "After game 1", "68 shots on the lane"]));
  });

  test.each(["lying", "upright"] as const)("looks as approved, %s", async (layout) => {
    await expectPicture(transitionChart({ hand: "right", moments: MOMENTS }, { layout }), `transition-${layout}`);
  });
});
