import type { PlateauInput } from "#drawing/plateauInput";
import type { Candidate, FinishPlan } from "#engine/planning/plan";
import { parseFinish } from "#engine/surface/finish";
import type { FieldProblem } from "../../client/protocol.ts";
import type { Draft } from "../plan/useDraft.ts";

/** Invented figures, chosen to show every state of a piece; nothing here was computed. */
const candidate = (finish: string, chance: number | null, entry: number): Candidate => ({
  finish,
  effectiveRaUm: 0.4,
  line: chance === null ? null : { laydownBoard: 19.2, launchAngleDeg: 1.4 },
  boardAtPins: chance === null ? null : 17.4,
  entryAngleDeg: chance === null ? null : entry,
  hookStartFt: chance === null ? null : 36.2,
  rollStartFt: entry > 4.2 ? null : 53.1,
  slipAtPinsMps: chance === null ? null : 0.04,
  speedAtPinsMph: chance === null ? null : 15.3,
  chance: chance === null ? null : { value: chance, low: chance - 0.06, high: chance + 0.05 },
  expectedPins: null,
  missLoss: chance === null ? null : { board: 0.012, halfDegree: 0.103, mph: 0.085 },
  pins:
    chance === null
      ? null
      : {
          strike: chance,
          pinsDown: 8.9,
          leaves: [
            { leave: "10", share: 0.09 },
            { leave: "7", share: 0.05 },
            { leave: "4-9", share: 0.02 },
          ],
          other: 1 - chance - 0.16,
        },
  keepsGames: chance === null || chance < 0.55 ? null : { value: 17, low: 9, high: 31 },
  onTodaysLine:
    chance === null
      ? null
      : {
          boardAtPins: 18.1,
          boardChange: 0.7,
          entryAngleDeg: entry,
          hookStartChangeFt: 1.5,
          chance: { value: chance - 0.05, low: chance - 0.12, high: chance },
          move: { feetBoards: 2, targetBoards: 1 },
        },
});

const CANDIDATES = [
  candidate("1000", 0.52, 3.6),
  candidate("2000", 0.58, 4.0),
  candidate("4000", 0.56, 4.3),
  candidate("4000 + polish", null, 0),
];

const plan = (pick: FinishPlan["pick"]): FinishPlan => ({
  metric: "strikeChance",
  ensemble: "worlds-0",
  worlds: 64,
  today: { finish: "1000", line: { laydownBoard: 20.1, launchAngleDeg: 1.9 } },
  candidates: CANDIDATES,
  pick,
  messages: [],
  reasons: [],
  rules: [],
  assumptions: [],
  cautions: [],
});

export const SAMPLE_PLANS: readonly [FinishPlan, FinishPlan, FinishPlan, FinishPlan] = [
  plan({ finish: "2000", plateau: ["2000"], cliff: null, sure: "unsure", sureShare: 0.61 }),
  plan({ finish: "2000", plateau: ["1000", "2000", "4000"], cliff: "smoother", sure: "sure", sureShare: 0.94 }),
  plan({ finish: "4000", plateau: ["2000", "4000"], cliff: "duller", sure: "likely", sureShare: 0.8 }),
  plan(null),
];

const loss = (finish: string, value: number | null) => ({
  finish: parseFinish(finish),
  lossPer100: value === null ? null : { value, low: value * 0.5 - 0.4, high: value * 1.5 + 0.8 },
});

export const SAMPLE_LOSSES: readonly PlateauInput[] = [
  {
    steps: [loss("500", 8.1), loss("1000", 2.6), loss("2000", 0), loss("3000", 0.3), loss("4000 + polish", 1.6)],
    pick: "2000",
    plateau: ["2000", "3000", "4000 + polish"],
    cliff: "duller",
  },
  {
    steps: [loss("1000", 0.4), loss("2000", 0), loss("4000", 6.2), loss("4000 + polish", null)],
    pick: "1000",
    plateau: ["1000", "2000"],
    cliff: "smoother",
  },
];

const nothing = (): void => undefined;

/** A form that shows its states and changes nothing. */
export const SAMPLE_DRAFT: Draft = {
  job: { filled: 17.5, wrong: "fast", text: "A. Bowler", choice: "two", wrongChoice: "three" },
  canUndo: false,
  set: nothing,
  setAll: nothing,
  replace: nothing,
  undo: nothing,
};

export const SAMPLE_PROBLEMS: readonly FieldProblem[] = [
  { path: "wrong", value: "fast", allowed: "−90 ≤ x ≤ 90 deg" },
  { path: "wrongChoice", value: "three", allowed: "one of one, two" },
];
