import { describe, expect, test } from "vitest";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { laneAsLaid, type PlayQuestion, playSession } from "#engine/planning/oilInPlay/session";
import { USUAL_LIMITS } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { computePool } from "#server/computePool";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { runTransition, type TransitionProgress } from "#tasks/transitionTask";

const QUESTION: PlayQuestion = {
  seed: 1,
  pattern: { kind: "named", id: "medium-41" },
  players: [
    {
      bowler: STYLES.matched,
      ball: { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false } },
      limits: USUAL_LIMITS,
      line: null,
      shotsAGame: 8.5,
    },
  ],
  games: 2,
  assumptions: {},
};

describe("a lane in play as a task", () => {
  test("is what the engine makes of it in one go, here and in threads", async () => {
    const pool = computePool(2);
    const whole = playSession(QUESTION);
    expect(await runTransition(QUESTION, { executor: inlineExecutor })).toEqual(whole);
    expect(await runTransition(QUESTION, { executor: pool })).toEqual(whole);
    await pool.close();
  });

  test("tells of every piece once, and of a game when it is through", async () => {
    const told: TransitionProgress[] = [];
    const lanes = await runTransition(QUESTION, { executor: inlineExecutor, onProgress: (one) => told.push(one) });
    expect(told.map(({ done }) => done)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(told.map((one) => one.lanes.length)).toEqual([1, 1, 1, 1, 2, 2, 2, 2, 3]);
    expect(told.at(-1)).toEqual({ done: 9, of: 9, lanes });
  });

  test("stops with the reason that was given; what was told of stands", async () => {
    const control = new AbortController();
    const reason = new Error("enough");
    const told: TransitionProgress[] = [];
    const run = runTransition(QUESTION, {
      executor: inlineExecutor,
      signal: control.signal,
      onProgress: (one) => {
        told.push(one);
        if (one.done === 2) control.abort(reason);
      },
    });
    await expect(run).rejects.toBe(reason);
    expect(told.at(-1)?.lanes).toEqual([laneAsLaid(QUESTION)]);
  });
});
