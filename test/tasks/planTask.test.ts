import { afterAll, describe, expect, test } from "vitest";
import { EngineFault } from "#engine/fault";
import { computePool } from "#server/computePool";
import type { Executor } from "#tasks/executor";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { type PlanProgress, runPlan } from "#tasks/planTask";
import type { ResultOf, Unit } from "#tasks/unit";
import { exampleQuestion } from "./question.ts";

/** Few worlds: whether they agree does not depend on how many they are. */
const WORLDS = 5;

/** Gives results back in the wrong order: what is asked first is answered last. */
function backwardsExecutor(): Executor {
  const held: (() => void)[] = [];
  return {
    run<U extends Unit>(unit: U): Promise<ResultOf<U>> {
      return new Promise((resolve, reject) => {
        inlineExecutor.run(unit, null).then((result) => {
          held.unshift(() => resolve(result));
          setTimeout(() => held.shift()?.(), 20);
        }, reject);
      });
    },
  };
}

describe("a finish plan as a task", () => {
  const pools = [1, 2].map((size) => computePool(size));
  afterAll(() => Promise.all(pools.map((pool) => pool.close())));

  test("is the same to the last bit in one thread, in two, here, and with answers in the wrong order", async () => {
    const question = exampleQuestion();
    const here = await runPlan(question, { executor: inlineExecutor, worlds: WORLDS });
    for (const executor of [...pools, backwardsExecutor()]) {
      expect(await runPlan(question, { executor, worlds: WORLDS })).toEqual(here);
    }
  });

  test("tells of a first plan after the courses, of what a few worlds say, of the session, of many worlds; counts every unit once", async () => {
    const told: PlanProgress[] = [];
    const plan = await runPlan(exampleQuestion(), { executor: inlineExecutor, worlds: WORLDS, onProgress: (p) => told.push(p) });
    const firstPlans = (["sketch", "session", "draws"] as const).map((stage) =>
      told.findIndex((p) => p.stage === stage && p.plan !== null),
    );
    expect(firstPlans[0]).toBeGreaterThan(0);
    // Before any other world is computed nothing is known of how sure the chances are: their intervals are single points.
    const widths = (p: PlanProgress) => p.plan?.candidates.map((c) => (c.chance === null ? 0 : c.chance.high - c.chance.low)) ?? [];
    expect(Math.max(...widths(told[firstPlans[0]]))).toBe(0);
    expect(told[firstPlans[0]].plan?.worlds).toBe(0);
    expect(told.findLast((p) => p.stage === "sketch")?.plan?.worlds).toBe(WORLDS);
    expect(told.findLast((p) => p.stage === "session")?.plan?.worlds).toBe(0);
    expect(Math.min(...widths(told.at(-1) as PlanProgress))).toBeGreaterThan(0);
    expect(told.map((p) => p.done)).toEqual(told.map((p) => p.done).toSorted((a, b) => a - b));
    const last = told.at(-1);
    expect(last?.plan).toEqual(plan);
    expect(last?.done).toBe(last?.of);
  });

  test("goes on in further worlds where it is asked to, with the whole answer standing, and ends as if all had been asked at once", async () => {
    const question = exampleQuestion();
    const told: PlanProgress[] = [];
    const refined = await runPlan(question, {
      executor: inlineExecutor,
      worlds: WORLDS,
      refinedTo: WORLDS + 3,
      onProgress: (p) => told.push(p),
    });
    const stands = told.findIndex(({ isRefining }) => isRefining);
    expect(told[stands].plan).toEqual(await runPlan(question, { executor: inlineExecutor, worlds: WORLDS }));
    expect(told.slice(stands).every(({ isRefining }) => isRefining)).toBe(true);
    expect(refined).toEqual(await runPlan(question, { executor: inlineExecutor, worlds: WORLDS + 3 }));
    expect(refined.worlds).toBe(WORLDS + 3);
    expect(told.at(-1)?.done).toBe(told.at(-1)?.of);
  });

  test.each(["here", "in threads"])("stops when asked to, %s, with the reason that was given", async (where) => {
    const control = new AbortController();
    const reason = new Error("enough");
    const running = runPlan(exampleQuestion(), {
      executor: where === "here" ? inlineExecutor : pools[1],
      worlds: WORLDS,
      signal: control.signal,
      onProgress: ({ stage }) => {
        if (stage === "session") control.abort(reason);
      },
    });
    await expect(running).rejects.toBe(reason);
  });

  test("a question that cannot be answered comes back from a thread with its problems", async () => {
    const question = exampleQuestion();
    const wrong = { ...question, bowler: { ...question.bowler, speedMph: 0 } };
    const fault = await runPlan(wrong, { executor: pools[0] }).catch((error: unknown) => error);
    expect(fault).toBeInstanceOf(EngineFault);
    expect((fault as EngineFault).problems[0]).toMatchObject({ path: "bowler.speedMph", value: 0 });
  });

  test("a closed pool refuses work instead of leaving it undone", async () => {
    const pool = computePool(1);
    const refused = expect(runPlan(exampleQuestion(), { executor: pool, worlds: WORLDS })).rejects.toThrow("closed");
    await pool.close();
    await refused;
  });
});
