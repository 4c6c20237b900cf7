import { TYPICAL_BALL } from "#engine/ball/typical";
import type { PlanQuestion } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { computePool } from "#server/computePool";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { runPlan } from "#tasks/planTask";
import { median, type Row } from "./rows.ts";

const ROUNDS = 3;

export const PLAN_QUESTION: PlanQuestion = {
  seed: 1,
  bowler: STYLES.matched,
  ball: { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false } },
  lane: { pattern: { kind: "named", id: "medium-41" }, playedShots: 0 },
  line: null,
  limits: { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] },
  candidates: null,
  outsideRangeReason: null,
  trial: [],
  readings: [],
  house: null,
  assumptions: {},
};

/** First and final answer of a plan of seven finishes on two threads, against the same plan in one. */
export async function planRows(): Promise<readonly Row[]> {
  const pool = computePool(2);
  await timedPlan(pool);
  const pairs: { two: Timing; one: Timing }[] = [];
  for (let round = 0; round < ROUNDS; round++) pairs.push({ two: await timedPlan(pool), one: await timedPlan(inlineExecutor) });
  await pool.close();
  const ms = (value: number) => `${Math.round(value)} ms`;
  const of = (pick: (pair: (typeof pairs)[number]) => number) => median(pairs.map(pick));
  return [
    {
      what: "plan, first answer on two threads (aim 50 ms)",
      value: ms(of((pair) => pair.two.first)),
      ratio: { rounds: pairs.map((pair) => pair.two.first / pair.one.first), of: "the time in one", better: "lower" },
    },
    {
      what: "plan, final answer on two threads (aim 3 s)",
      value: ms(of((pair) => pair.two.last)),
      ratio: { rounds: pairs.map((pair) => pair.two.last / pair.one.last), of: "the time in one", better: "lower" },
    },
  ];
}

interface Timing {
  readonly first: number;
  readonly last: number;
}

async function timedPlan(executor: Parameters<typeof runPlan>[1]["executor"]): Promise<Timing> {
  const start = performance.now();
  let first = 0;
  await runPlan(PLAN_QUESTION, {
    executor,
    onProgress: ({ plan }) => {
      if (plan && first === 0) first = performance.now() - start;
    },
  });
  return { first, last: performance.now() - start };
}
