import { describe, expect, it } from "vitest";
import { comparedIn, pickOf, tiedOf } from "../../tools/bruteForce/compared.ts";
import { randomQuestion } from "../../tools/bruteForce/randomQuestion.ts";

/** A few of the questions of `npm run plan-check`, in few worlds; the page of the finish plan has what two hundred came to. */
describe.each([1, 2, 3, 4].map((seed) => ({ seed })))("a plan against brute force, random question $seed", ({ seed }) => {
  const { few, all, nodesOff } = comparedIn(randomQuestion(seed), 12, 48, 3);

  it("scores as if every node were thrown: to 0.2 strikes in a hundred", () => {
    expect(nodesOff.length).toBe(9);
    for (const off of nodesOff) expect(100 * Math.abs(off)).toBeLessThan(0.2);
  });

  it("picks what four times as many worlds do not tell apart from their best, and has their pick among its own tied", () => {
    expect(tiedOf(all)).toContain(pickOf(few));
    expect(tiedOf(few)).toContain(pickOf(all));
  });

  it("says a share that is theirs to 25 in a hundred", () => {
    expect(100 * Math.abs(few.share - all.share)).toBeLessThan(25);
  });
});
