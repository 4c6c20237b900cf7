import { describe, expect, it } from "vitest";
import { inMirror } from "#engine/delivery/backup";
import type { Bowler } from "#engine/delivery/bowler";
import { KNOWN_BY_WORD } from "#engine/delivery/words";
import type { FilmPoint } from "#engine/lane/lane";
import type { FinishPlan } from "#engine/planning/plan";
import type { PlanQuestion } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { decide, rate, scoreWorlds, wantedOf } from "#engine/planning/steps";
import { parseFinish } from "#engine/surface/finish";
import { customerLines } from "#words/customerLines";
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
    "a bone-dry lane: less ball is the answer, not another surface, and it is said once",
    filmed(30, () => 0.02),
    (plan) => {
      expect(said(plan).filter((id) => id === "message.noLine.hooksTooMuch" || id === "message.rollsEarly")).toHaveLength(1);
      expect(customerLines(plan).join()).toContain("weaker ball");
    },
  ],
  [
    "oil to the pins: no surface makes a ball hook that slides the whole way",
    filmed(60, () => 5),
    (plan) => {
      for (const { hookStartFt } of plan.candidates) expect(hookStartFt).toBeNull();
      expect(said(plan)).toContain("message.slidesThrough");
      expect(customerLines(plan).join()).not.toContain("keep the one you have");
    },
  ],
  [
    "no rotation: the ball goes on as it is sent, whatever the finish, and nothing is called its hook",
    bowling({ axisRotationDeg: 0 }),
    (plan) => {
      const boards = plan.candidates.map(({ onTodaysLine }) => onTodaysLine?.boardChange ?? 0);
      expect(Math.max(...boards) - Math.min(...boards)).toBeLessThan(2);
      for (const { hookStartFt, rollStartFt } of plan.candidates) expect([hookStartFt, rollStartFt !== null]).toEqual([null, true]);
      expect(said(plan)).toContain("message.noTurn");
    },
  ],
  [
    "a backup ball is the other hand's hook, and strikes as one",
    { ...base, bowler: inMirror({ ...STYLES.matched, axisRotationDeg: -45 }) },
    (plan) => {
      expect(said(plan)).toContain("message.backup");
      expect(said(plan).some((id) => id.startsWith("message.noLine"))).toBe(false);
      expect(Math.max(...plan.candidates.map(({ chance }) => chance?.value ?? 0))).toBeGreaterThan(0.35);
    },
  ],
  [
    "a beginner whose shots go everywhere: pins are counted, and it is the shots that are named, not the ball",
    bowling({
      speedMph: 12,
      revRateRpm: 120,
      axisRotationDeg: 20,
      spread: { ...STYLES.matched.spread, launchAngleDeg: 2.2, laydownBoards: 5 },
    }),
    (plan) => {
      expect(plan.metric).toBe("expectedPins");
      expect(said(plan)).toContain("message.noLine.scattered");
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
    for (const { chance, onTodaysLine } of plan.candidates)
      if (plan.metric === "strikeChance") expect(onTodaysLine?.chance?.value ?? 0).toBeLessThanOrEqual((chance?.value ?? 0) + 1e-9);
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
  // Where every world agrees, only what was guessed keeps it from being surer.
  const everyWorldAgrees = (known: Partial<Bowler>) => {
    const question = asked("matched", "solid", "medium-41", { candidates: [parseFinish("1000"), parseFinish("3000")] });
    const guessed = { ...question, bowler: { ...question.bowler, ...known } };
    const wanted = wantedOf(guessed);
    const block = scoreWorlds(guessed, wanted, "fresh", 0, 32);
    const finishes = block.finishes.map((row, i) => ({ ...row, scores: row.scores.map(() => (i === 0 ? 0.5 : 0.1)) }));
    const ratings = wanted.finishes.map((finish) => rate(guessed, finish, { ...wanted, span: "fresh" }));
    return decide(guessed, wanted, ratings, [{ ...block, finishes }]).pick?.sureShare;
  };
  expect(everyWorldAgrees({})).toBeGreaterThan(0.8);
  expect(everyWorldAgrees({ known: { speedMph: 1.2 } })).toBe(0.8);
});
