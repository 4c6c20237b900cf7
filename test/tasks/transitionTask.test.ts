import { describe, expect, test } from "vitest";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { playedInWorld, WORLDS_PLAYED } from "#engine/planning/oilInPlay/inWorlds";
import { laneAsLaid, type PlayQuestion, playSession } from "#engine/planning/oilInPlay/session";
import { USUAL_LIMITS } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { ensemble } from "#engine/worlds/ensemble";
import { computePool } from "#server/computePool";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { rangesOfTransition, runTransition, type TransitionProgress } from "#tasks/transitionTask";

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

  test("over the worlds: each is the session under its own constants, the middle lies in the range, more removal takes more", async () => {
    const question: PlayQuestion = { ...QUESTION, games: 1 };
    const lanes = playSession(question);
    const ranges = await rangesOfTransition(question, lanes, { executor: inlineExecutor });
    expect(ranges).toHaveLength(2);
    const [laid, played] = ranges;
    expect(laid.takenMl).toEqual([0, 0]);
    const { takenMl } = lanes[1];
    expect(played.takenMl[0]).toBeLessThan(takenMl);
    expect(played.takenMl[1]).toBeGreaterThan(takenMl);
    const worlds = ensemble().worlds.slice(0, WORLDS_PLAYED);
    const own = worlds.map((world) => playedInWorld(question, world.id).games[1].takenMl);
    expect(Math.max(...own)).toBeCloseTo(played.takenMl[1], 9);
    const [{ values, night }] = worlds;
    expect(playSession({ ...question, assumptions: { ...values, ...night.lane } })[1].takenMl).toBe(own[0]);
    const removing = (removal: number) => playSession({ ...question, assumptions: { "wear.removal": removal } })[1].takenMl;
    expect(removing(0.08)).toBeGreaterThan(1.3 * removing(0.04));
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
