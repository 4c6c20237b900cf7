import { describe, expect, it } from "vitest";
import { heatVerdict } from "#engine/rules/heat";

describe("heat on a ball", () => {
  it("is fine to 130 °F, warned of above it, refused above 140 (makers' warnings, second-hand)", () => {
    expect([120, 130, 131, 140, 141].map((degrees) => heatVerdict(degrees, null).verdict)).toEqual([
      "fine",
      "fine",
      "warn",
      "warn",
      "refuse",
    ]);
  });

  it("is refused above the limit of the ball's maker where that is lower, and never allowed by one that is higher", () => {
    expect(heatVerdict(120, 115)).toEqual({ verdict: "refuse", limitF: 115, limitBy: "maker" });
    expect(heatVerdict(145, 160)).toEqual({ verdict: "refuse", limitF: 140, limitBy: "anybody" });
  });
});
