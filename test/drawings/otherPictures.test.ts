import { describe, expect, it, test } from "vitest";
import { complaintScrap } from "#drawing/complaintScrap";
import { plateauBar } from "#drawing/plateauBar";
import { smallMultiples } from "#drawing/smallMultiples";
import { stippleOf, textureSwatch } from "#drawing/texture";
import { effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { brokenCourse, wedgeFilm } from "./given.ts";
import { elementsOf, expectPicture, textsOf } from "./snapshot.ts";

describe("a finish is a texture", () => {
  const ladder = ["360", "500", "1000", "2000", "3000", "4000", "5000"].map((f) => parseFinish(f));

  test("the coarser the surface the coarser the grains and the more of them is dark", () => {
    const grains = ladder.map((f) => stippleOf(effectiveRaUm(f), f.polished));
    const dark = grains.map((g) => g.grains * g.radius * g.radius);
    for (let i = 1; i < ladder.length; i++) {
      expect(grains[i].radius).toBeLessThan(grains[i - 1].radius + 1e-9);
      expect(dark[i]).toBeLessThan(dark[i - 1] * 1.02);
    }
  });

  test("polish leaves less than half of the grains' ground dark", () => {
    const [plain, polished] = ["1000", "1000 + polish"].map((f) => parseFinish(f)).map((f) => stippleOf(effectiveRaUm(f), f.polished));
    expect(polished.grains * polished.radius ** 2).toBeLessThan(0.5 * plain.grains * plain.radius ** 2);
  });

  test.each(["500", "2000", "4000 + polish"])("%s looks as approved", async (finish) => {
    await expectPicture(textureSwatch("t", parseFinish(finish), 96), `texture-${finish.replaceAll(/\W+/g, "-")}`);
  });
});

const loss = (finish: string, value: number | null) => ({
  finish: parseFinish(finish),
  lossPer100: value === null ? null : { value, low: value / 2, high: value * 1.5 + 1 },
});
const BAR = {
  steps: [loss("500", 8), loss("1000", 3), loss("2000", 1), loss("3000", 0), loss("4000", 6), loss("4000 + polish", null)],
  pick: "3000",
  plateau: ["2000", "3000"],
  cliff: "smoother",
} as const;

describe("what each finish costs", () => {
  test("a loss twice as large lies twice as deep", () => {
    const svg = plateauBar(BAR);
    const marks = elementsOf(svg, "circle")
      .filter((c) => c.r === "3.6")
      .map((c) => Number(c.cy));
    const [at8, at3, at1, at6] = marks;
    expect((at8 - at1) / (at3 - at1)).toBeCloseTo(7 / 2, 1);
    expect((at6 - at1) / (at3 - at1)).toBeCloseTo(5 / 2, 1);
  });

  test("names the pick, brackets the plateau, hatches the side of the cliff, and says where there is no line", () => {
    const svg = plateauBar(BAR);
    expect(svg).toContain('class="gw-pennant"');
    expect(svg).toContain('class="gw-flat"');
    const cliff = /class="gw-cliff" d="M([\d.]+)/.exec(svg);
    const pennant = /class="gw-pennant" d="M([\d.]+)/.exec(svg);
    expect(Number(cliff?.[1])).toBeGreaterThan(Number(pennant?.[1]));
    expect(textsOf(svg)).toContain("no line");
    expect(/<desc[^>]*>([^<]*)/.exec(svg)?.[1]).toContain("500: 8.0, between 4.0 and 13.0.");
  });

  // As it was seen: two finishes on the dull side that cost much the same, so that there is no room by the cliff itself.
  test.each(["lying", "upright"] as const)("the words of a cliff lie on no figure, %s", (layout) => {
    const losses = { "500": 5.5, "1000": 2.1, "2000": 2.4, "3000": 1.3, "4000": -0.6, "2000 + polish": 0, "4000 + polish": 0.9 };
    const steps = Object.entries(losses).map(([finish, value]) => ({
      finish: parseFinish(finish),
      lossPer100: { value, low: value, high: value },
    }));
    const svg = plateauBar({ steps, pick: "2000 + polish", plateau: ["3000", "4000", "2000 + polish"], cliff: "duller" }, { layout });
    const texts = [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, given, words]) => {
      const of = (name: string) => new RegExp(`${name}="([^"]*)"`).exec(given)?.[1] ?? "";
      const [x, size, half] = [Number(of(" x")), Number(of("font-size")), (words.length * Number(of("font-size")) * 0.5) / 2];
      const middle = { start: x + half, middle: x, end: x - half }[of("text-anchor")] ?? x + half;
      return { words, y: Number(of(" y")), left: middle - half, right: middle + half, size };
    });
    const cliff = texts.find(({ words }) => words === "falls off quickly");
    if (cliff === undefined) throw new Error("The cliff has no words.");
    const meeting = texts.filter(
      (one) => one !== cliff && Math.abs(one.y - cliff.y) < 0.8 * one.size && one.left < cliff.right && cliff.left < one.right,
    );
    expect(meeting.map(({ words }) => words)).toEqual([]);
  });

  test("without a pick and a cliff neither is drawn", () => {
    const svg = plateauBar({ ...BAR, pick: null, plateau: [], cliff: null });
    expect(svg).not.toMatch(/gw-pennant|gw-flat|gw-cliff/);
  });

  test.each(["lying", "upright"] as const)("looks as approved, %s", async (layout) => {
    await expectPicture(plateauBar(BAR, { layout }), `loss-${layout}`);
  });
});

describe("finishes side by side", () => {
  const input = {
    film: wedgeFilm(),
    hand: "right" as const,
    today: brokenCourse("right"),
    compared: ["1000", "3000", "4000 + polish"].map((f) => ({
      finish: parseFinish(f),
      course: brokenCourse("right"),
      picked: f === "3000",
      differences: [`what ${f} changes`, "and more"],
    })),
  };

  test("one strip a finish, each with today's course beneath its own and its differences in words", () => {
    const svg = smallMultiples(input);
    expect(svg.match(/class="gw-strip"/g)).toHaveLength(3);
    // Today's course is drawn once, in the lane that every strip shows.
    expect(svg.match(/class="gw-course"/g)).toHaveLength(4);
    expect(svg.match(/<use href="#compare-lane"/g)).toHaveLength(3);
    expect(textsOf(svg)).toEqual(
      expect.arrayContaining(["what 1000 changes", "what 3000 changes", "what 4000 + polish changes", "3000 · pick"]),
    );
  });

  test.each(["lying", "upright"] as const)("looks as approved, %s", async (layout) => {
    await expectPicture(smallMultiples(input, { layout }), `compare-${layout}`);
  });
});

describe("scraps of chart beside complaints", () => {
  it("show every pin and ball whole", () => {
    for (const sign of ["hooksEarlyHitsWeak", "skidsPast", "hooksLess", "deflects", "scratched", "justRefresh"] as const) {
      const svg = complaintScrap(sign, sign, sign);
      const [width, height] = /viewBox="0 0 (\S+) (\S+)"/.exec(svg)?.slice(1).map(Number) ?? [];
      const of = (text: string, name: string) => Number(new RegExp(` ${name}="([^"]+)"`).exec(text)?.[1] ?? 0);
      const circles = [...svg.matchAll(/<circle[^>]*>/g)].map(([one]) => [of(one, "cx"), of(one, "cy"), of(one, "r"), of(one, "r")]);
      const pins = [...svg.matchAll(/<rect[^>]* rx=[^>]*>/g)].map(([one]) => {
        const [w, h] = [of(one, "width") / 2, of(one, "height") / 2];
        return [of(one, "x") + w, of(one, "y") + h, w, h];
      });
      expect(circles.length + pins.length).toBeGreaterThan(0);
      for (const [x, y, w, h] of [...circles, ...pins]) {
        expect(x - w).toBeGreaterThanOrEqual(0);
        expect(x + w).toBeLessThanOrEqual(width);
        expect(y - h).toBeGreaterThanOrEqual(0);
        expect(y + h).toBeLessThanOrEqual(height);
      }
    }
  });
});
