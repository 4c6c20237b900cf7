import { expect, test } from "vitest";
import { type PlanJob, planQueue } from "#server/plans/planQueue";
import type { Executor } from "#tasks/executor";
import { exampleQuestion } from "../tasks/question.ts";

/** An executor that never finishes a unit but lets it be stopped: what is waiting and running can be looked at. */
const stuck: Executor = {
  run: (_unit, signal) =>
    new Promise((_resolve, reject) => {
      signal?.addEventListener("abort", () => reject(signal.reason), { once: true });
    }),
};

const failing: Executor = { run: () => Promise.reject(new Error("thread died")) };

function states(jobs: readonly (PlanJob | null)[]): string[] {
  return jobs.map((job) => `${job?.id} ${job?.state}`);
}

test("clients take turns, whoever asked for more first", async () => {
  const queue = planQueue(stuck, { plansAtOnce: 1, plansPerPerson: 3 });
  const jobs = ["a1", "a2", "a3", "b1"].map((id) => queue.ask(id, id[0], exampleQuestion()));
  expect(states(jobs)).toEqual(["a1 running", "a2 waiting", "a3 waiting", "b1 waiting"]);
  queue.stop("a1");
  await settled();
  expect(states(jobs)).toEqual(["a1 stopped", "a2 waiting", "a3 waiting", "b1 running"]);
  queue.stop("b1");
  await settled();
  expect(states(jobs)).toEqual(["a1 stopped", "a2 running", "a3 waiting", "b1 stopped"]);
  await queue.close();
});

test("one client may have so many under way and no more; an ended plan makes room", async () => {
  const queue = planQueue(stuck, { plansAtOnce: 2, plansPerPerson: 2 });
  expect(["1", "2", "3"].map((id) => queue.ask(id, "a", exampleQuestion())?.state ?? "refused")).toEqual(["running", "running", "refused"]);
  expect(queue.ask("4", "b", exampleQuestion())?.state).toBe("waiting");
  queue.stop("1");
  await settled();
  expect(queue.ask("5", "a", exampleQuestion())?.state).toBe("waiting");
  await queue.close();
});

test("a plan that waits can be stopped, and closing stops all and takes no more", async () => {
  const queue = planQueue(stuck, { plansAtOnce: 1, plansPerPerson: 9 });
  const jobs = ["1", "2", "3"].map((id) => queue.ask(id, "a", exampleQuestion()));
  expect(queue.stop("2")?.state).toBe("stopped");
  expect(queue.stop("none")).toBeNull();
  await queue.close();
  expect(states(jobs)).toEqual(["1 stopped", "2 stopped", "3 stopped"]);
  expect(queue.ask("4", "a", exampleQuestion())).toBeNull();
});

test("a fault of the threads is a failed plan that says why, and the next one is taken", async () => {
  const queue = planQueue(failing, { plansAtOnce: 1, plansPerPerson: 9 });
  const heard: string[] = [];
  const job = queue.ask("1", "a", exampleQuestion());
  queue.listen("1", (news) => heard.push(news.state));
  await settled();
  expect([job?.state, String(job?.reason), ...heard]).toEqual(["failed", "Error: thread died", "failed"]);
  queue.ask("2", "a", exampleQuestion());
  await settled();
  expect(queue.find("2")?.state).toBe("failed");
});

test("of plans that have ended the oldest are forgotten", async () => {
  const queue = planQueue(failing, { plansAtOnce: 1, plansPerPerson: 1 });
  for (let i = 0; i < 60; i++) {
    queue.ask(`${i}`, "a", exampleQuestion());
    await settled();
  }
  expect([queue.find("5"), queue.find("59")?.state]).toEqual([null, "failed"]);
});

/** Lets everything that is already decided take its course. */
function settled(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
