import { describe, expect, it } from "vitest";
import type { Bowler } from "#engine/delivery/bowler";
import { KNOWN_BY_WORD } from "#engine/delivery/words";
import type { FilmPoint } from "#engine/lane/lane";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { parseFinish } from "#engine/surface/finish";
import { asked, planned } from "./questions.ts";

const base = asked("matched", "hybrid", "medium-41");
const bowling = (more: Partial<Bowler>): PlanQuestion => ({ ...base, bowler: { ...STYLES.matched, ...more } });
const filmed = (lengthFt: number, um: (board: number, ft: number) => number): PlanQuestion => {
  const points: FilmPoint[] = [1, 5, 10, 15, 20, 25, 30, 35, 39].flatMap((board) =>
    [1, 20, lengthFt - 1].map((ft) => ({ board, ft, um: um(board, ft) })),
  );
  return { ...base, lane: { pattern: { kind: "filmPoints", name: "measured", lengthFt, points }, playedShots: 0 } };
};
const said = (plan: FinishPlan) => plan.messages.map(({ id }) => id);

/** What a technician would say to each (common practice), and that nothing in the answer is not a number. */
const ODD: readonly (readonly [string, PlanQuestion, (plan: FinishPlan) => void])[] = [
  [
    "two hands: much hand, little tilt; wants a smooth finish on this lane",
    bowling({ speedMph: 17, revRateRpm: 480, axisRotationDeg: 55, axisTiltDeg: 5 }),
    (plan) => expect(plan.pick?.plateau.at(-1) ?? "4000 + polish").toMatch(/polish|[34]000/),
  ],
  [
    "a bone-dry lane: less ball is the answer, not another surface",
    filmed(30, () => 0.02),
    (plan) => expect(said(plan).some((id) => id === "message.noLine.hooksTooMuch" || id === "message.rollsEarly")).toBe(true),
  ],
  [
    "oil to the pins: the dullest, and more ball",
    filmed(60, () => 3),
    (plan) => {
      if (plan.pick !== null) expect(plan.pick.plateau).toContain("500");
      expect(
        said(plan).some(
          (id) =>
            id.startsWith("message.noLine.hooksTooLittle") || id === "message.coverAtLimit.duller" || id.startsWith("message.noMatter"),
        ),
      ).toBe(true);
    },
  ],
  [
    "no rotation: the ball rolls forward and hooks hardly at all, whatever the finish",
    bowling({ axisRotationDeg: 0 }),
    (plan) => {
      const boards = plan.candidates.map(({ onTodaysLine }) => onTodaysLine?.boardChange ?? 0);
      expect(Math.max(...boards) - Math.min(...boards)).toBeLessThan(2);
    },
  ],
  [
    "a backup ball curves the other way: it never comes to the pocket from outside with any angle",
    bowling({ axisRotationDeg: -45 }),
    (plan) => {
      for (const { entryAngleDeg } of plan.candidates) expect(entryAngleDeg ?? 0).toBeLessThan(3);
      for (const { chance } of plan.candidates) expect(chance?.value ?? 0).toBeLessThan(0.35);
    },
  ],
  [
    "a slow junior with a light ball: pins or strikes, a pick or a reason for none",
    { ...bowling({ speedMph: 11, revRateRpm: 120, axisRotationDeg: 20 }), ball: { ...base.ball, massLb: 10 } },
    (plan) => expect(plan.pick !== null || said(plan).length > 0).toBe(true),
  ],
];

describe("odd bowlers and lanes get sane answers", () => {
  it.each(ODD)("%s", (_, question, holds) => {
    const plan = planned(question, 4);
    JSON.stringify(plan, (_key, value: unknown) => {
      if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
      return value;
    });
    holds(plan);
  });
});

it("a delivery told in words makes wider intervals than the same numbers measured, and a pick that is never called sure", () => {
  const width = (plan: FinishPlan) =>
    plan.candidates.reduce((sum, { chance }) => sum + (chance === null ? 0 : chance.high - chance.low), 0);
  const pairs = (["medium-41"] as const).map((pattern) => {
    const measured = asked("matched", "solid", pattern, { candidates: [parseFinish("1000"), parseFinish("3000")] });
    return [measured, { ...measured, bowler: { ...measured.bowler, known: KNOWN_BY_WORD } }].map((question) => planned(question, 24));
  });
  for (const [measured, inWords] of pairs) expect(width(inWords)).toBeGreaterThan(1.05 * width(measured));
  for (const [, inWords] of pairs) {
    expect(inWords.pick?.sureShare ?? 0).toBeLessThanOrEqual(0.8);
    expect(inWords.pick?.sure).not.toBe("sure");
  }
  // Where every world agrees, only what was guessed keeps it from being sure.
  const clear = asked("speedDominant", "solid", "medium-41", { candidates: [parseFinish("500"), parseFinish("4000 + polish")] });
  expect(planned(clear, 48).pick?.sureShare).toBeGreaterThan(0.8);
  expect(planned({ ...clear, bowler: { ...clear.bowler, known: { speedMph: 1.2 } } }, 48).pick?.sureShare).toBeLessThanOrEqual(0.8);
});
