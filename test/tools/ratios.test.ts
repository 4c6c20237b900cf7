import { describe, expect, it } from "vitest";
import { compared, keptRatios, ratiosOf } from "../../bench/kept.ts";
import type { Row } from "../../bench/rows.ts";

const row = (what: string, rounds: readonly number[], better: "higher" | "lower" = "higher"): Row => ({
  what,
  value: "",
  ratio: { rounds, of: "a reference", better },
});

describe("a run of the benchmark against the committed table", () => {
  const kept = { speed: 4, time: 0.5 };

  it("says nothing where the best round is about as good, however the others were disturbed", () => {
    expect(compared([row("speed", [0.7, 3.2, 1]), row("time", [2, 0.6, 0.9], "lower")], kept)).toEqual({ worse: [], halved: [] });
  });

  it("tells what got worse, and fails what is not half as good, whichever way is better", () => {
    const found = compared([row("speed", [2.5, 2.4]), row("time", [1.1, 1.2], "lower")], kept);
    expect(found.worse).toEqual(["speed: 2.50 × a reference at best, 4 in the table"]);
    expect(found.halved).toEqual(["time: 1.10 × a reference at best, 0.5 in the table"]);
  });

  it("leaves alone what has no reference here, or is not in the table yet", () => {
    expect(compared([{ what: "speed", value: "", ratio: null }, row("new", [1])], kept)).toEqual({ worse: [], halved: [] });
  });

  it("the table is there, and holds medians", () => {
    expect(ratiosOf([row("speed", [1, 9, 3])])).toEqual({ speed: 3 });
    expect(Object.keys(keptRatios())).toContain("very many shots, vector kernel");
  });
});
