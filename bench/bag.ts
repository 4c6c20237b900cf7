import { assume } from "#engine/assumptions";
import type { CoverId } from "#engine/ball/ball";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { type BagBall, type BagQuestion, stageCount } from "#engine/planning/bag/question";
import { statesOf } from "#engine/planning/bag/states";
import { drawnField } from "#engine/planning/oilInPlay/field";
import { USUAL_LIMITS } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { parseFinish } from "#engine/surface/finish";
import { computePool } from "#server/computePool";
import { runBag } from "#tasks/bagTask";
import type { Executor } from "#tasks/executor";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { median, type Row } from "./rows.ts";

const ROUNDS = 3;
const SHOTS_A_GAME = 8.5;
const FINISHES = ["500", "1000", "2000", "3000", "4000", "2000 + polish", "4000 + polish"].map((finish) => parseFinish(finish));

/** Eight balls that strike, each in one of seven finishes: as it lies, at 2000, or worked into another. */
const BALLS: readonly BagBall[] = (
  [
    ["solid", 0.05],
    ["solid", 0.04],
    ["hybrid", 0.048],
    ["hybrid", 0.036],
    ["pearl", 0.048],
    ["pearl", 0.036],
    ["pearl", 0.028],
    ["urethane", 0.02],
  ] satisfies [CoverId, number][]
).map(([cover, differentialIn], i) => ({
  ball: { ...TYPICAL_BALL, name: `Ball ${i + 1}`, cover, differentialIn, finish: parseFinish("2000") },
  gamesSince: 0,
  finishes: FINISHES,
}));

export const BAG_QUESTION: BagQuestion = {
  seed: 1,
  bowler: STYLES.matched,
  limits: USUAL_LIMITS,
  balls: BALLS,
  pattern: { kind: "named", id: "medium-41" },
  session: {
    games: 3,
    stagesAGame: 4,
    practiceShots: 4,
    shotsAGame: SHOTS_A_GAME,
    others: drawnField(7, 1, SHOTS_A_GAME, USUAL_LIMITS, 5, assume()),
  },
  work: { numbers: null, polish: true, minutesBefore: 240, minutesInPractice: 0, minutesBetweenGames: 0 },
  rules: { book: "usbc", on: "2026-11-25", event: null },
  assumptions: {},
};

/** First and final answer of a bag of eight balls, seven finishes and twelve stages on two threads, against the same bag in one. */
export async function bagRows(): Promise<readonly Row[]> {
  const pool = computePool(2);
  await pool.run({ kind: "bagStates", question: BAG_QUESTION }, null);
  const pairs: { two: Timing; one: Timing }[] = [];
  for (let round = 0; round < ROUNDS; round++) pairs.push({ two: await timedBag(pool), one: await timedBag(inlineExecutor) });
  await pool.close();
  const states = BAG_QUESTION.balls.reduce((sum, _, ball) => sum + statesOf(BAG_QUESTION, ball).length, 0);
  const size = `bag of ${BAG_QUESTION.balls.length} balls in ${states} states over ${stageCount(BAG_QUESTION.session)} stages`;
  const processor = median(pairs.map(({ two }) => two.processor));
  const row = (what: string, pick: (timing: Timing) => number): Row => ({
    what: `${size}, ${what}`,
    value: `${median(pairs.map(({ two }) => pick(two))).toFixed(1)} s`,
    ratio: { rounds: pairs.map(({ two, one }) => pick(two) / pick(one)), of: "the time in one", better: "lower" },
  });
  return [
    row("first answer on two threads", ({ first }) => first),
    row("final answer on two threads (aim 10 s)", ({ last }) => last),
    { what: `${size}, processor time of all threads`, value: `${processor.toFixed(1)} s`, ratio: null },
  ];
}

/** Seconds. */
interface Timing {
  readonly first: number;
  readonly last: number;
  /** Of all threads together: hardly moved by what else the machine does. */
  readonly processor: number;
}

async function timedBag(executor: Executor): Promise<Timing> {
  const start = performance.now();
  const used = process.cpuUsage();
  let first = 0;
  await runBag(BAG_QUESTION, {
    executor,
    onProgress: ({ plan }) => {
      if (plan !== null && first === 0) first = (performance.now() - start) / 1000;
    },
  });
  const { user, system } = process.cpuUsage(used);
  return { first, last: (performance.now() - start) / 1000, processor: (user + system) / 1e6 };
}
