import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { PlanTask } from "#contract/routes/plans";
import type { Executor } from "#tasks/executor";
import { onTheCounter } from "../records/shop.ts";
import { problemOf, type ShopServer, shopServer } from "./shopServer.ts";

const JOB = {
  gritwright: 1,
  bowler: { speedMph: 17.5, revRateRpm: 320, axisRotationDeg: 45, axisTiltDeg: 14 },
  ball: { cover: "hybrid", finish: "1000" },
  lane: { pattern: "medium-41" },
  candidates: ["1000", "2000"],
};

/** Never finishes a unit, but lets it be stopped. */
const stuck: Executor = {
  run: (_unit, signal) => new Promise((_resolve, reject) => signal?.addEventListener("abort", () => reject(signal.reason), { once: true })),
};

let shop: ShopServer;
afterEach(() => shop.end());

describe("a plan", () => {
  beforeEach(async () => {
    shop = await shopServer();
  });

  test("is computed while it is listened to, is there when done, and is kept with a ticket as what it was made from", {
    timeout: 120_000,
  }, async () => {
    const asked = await shop.ask("askPlan", { body: JOB });
    const params = { id: asked.body.id };
    expect(asked.headers.get("location")).toBe(`/api/plans/${params.id}`);
    const told = await events<PlanTask>(await shop.raw(`/api/plans/${params.id}/events`));
    expect(told.every(({ event }) => event === "plan")).toBe(true);
    const done = told.map(({ data }) => data.progress?.done ?? 0);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(told.at(-1)?.data.state).toBe("done");
    const { body } = await shop.ask("getPlan", { params });
    expect(body).toEqual(told.at(-1)?.data);
    expect(body.plan.candidates.map(({ finish }: { finish: string }) => finish)).toEqual(["1000", "2000"]);

    const { ticket } = await onTheCounter(shop);
    const kept = await shop.ask("keepPlan", { params: { id: ticket.id }, body: { planId: params.id }, headers: { "if-match": '"1"' } });
    expect(kept.body.plan).toMatchObject({
      engineVersion: "0.0.0-test",
      seed: body.plan.seed,
      pick: body.plan.pick?.finish ?? null,
      inputs: body.plan.inputs,
    });
    const again = await shop.ask("askPlan", { body: kept.body.plan.inputs });
    await events(await shop.raw(`/api/plans/${again.body.id}/events`));
    const recomputed = (await shop.ask("getPlan", { params: { id: again.body.id } })).body;
    expect([recomputed.plan.pick, recomputed.plan.candidates]).toEqual([body.plan.pick, body.plan.candidates]);
  });

  test("of a job file that asks for none is refused with its fields; a plan that is not there is not found", async () => {
    const friction = { ...JOB, lane: { friction: { mu: 0.2 } } };
    problemOf(await shop.ask("askPlan", { body: friction }), "invalid");
    expect(problemOf(await shop.ask("askPlan", { body: { ...JOB, bowler: { speedMph: 0 } } }), "invalid").problems?.[0].path).toBe(
      "bowler.speedMph",
    );
    for (const name of ["getPlan", "stopPlan", "hearPlan"] as const)
      problemOf(await shop.ask(name, { params: { id: "none" } }), "notFound");
    const { ticket } = await onTheCounter(shop);
    problemOf(
      await shop.ask("keepPlan", { params: { id: ticket.id }, body: { planId: "none" }, headers: { "if-match": '"1"' } }),
      "notNow",
    );
  });
});

describe("plans of several people", () => {
  beforeEach(async () => {
    shop = await shopServer({ executor: stuck, limits: { plansPerPerson: 2, listeners: 1 } });
  });

  test("each may have so many under way; stopping one makes room", async () => {
    const { body: other } = await shop.ask("createPerson", { body: { name: "Ansel Quillfeather", initials: "AQ" } });
    const first = await shop.ask("askPlan", { body: JOB });
    await shop.ask("askPlan", { body: JOB });
    problemOf(await shop.ask("askPlan", { body: JOB }), "tooMany");
    expect((await shop.ask("askPlan", { body: JOB, headers: { "x-gritwright-person": other.id } })).status).toBe(202);
    await shop.ask("stopPlan", { params: { id: first.body.id } });
    await expect.poll(async () => (await shop.ask("getPlan", { params: { id: first.body.id } })).body.state).toBe("stopped");
    expect((await shop.ask("askPlan", { body: JOB })).status).toBe(202);
  });

  test("as many pages listen as may; one that leaves makes room; a server that stops ends them", async () => {
    const { body: plan } = await shop.ask("askPlan", { body: JOB });
    const path = `/api/plans/${plan.id}/events`;
    const leaving = await shop.raw(path);
    problemOf(await shop.ask("hearPlan", { params: { id: plan.id } }), "tooMany");
    await leaving.body?.cancel();
    await expect.poll(async () => (await shop.raw("/api/queue/events")).status).toBe(200);
  });

  test("a server that stops says so, ends the events and stops the plans", async () => {
    const { body: plan } = await shop.ask("askPlan", { body: JOB });
    const listening = events<PlanTask>(await shop.raw(`/api/plans/${plan.id}/events`));
    await shop.close();
    await listening;
    expect((await shop.ask("health")).body.state).toBe("closing");
    expect((await shop.ask("getPlan", { params: { id: plan.id } })).body.state).toBe("stopped");
    problemOf(await shop.ask("hearQueue"), "closing");
  });
});

describe("the queue's events", () => {
  test("tell the queue now and after a change; many changes at once are told once", async () => {
    shop = await shopServer();
    const { visit, ball } = await onTheCounter(shop);
    const response = await shop.raw("/api/queue/events");
    const reader = response.body?.getReader();
    const next = async (): Promise<number> => {
      const text = new TextDecoder().decode((await reader?.read())?.value);
      return JSON.parse(/^data: (.*)$/m.exec(text)?.[1] ?? "").items.length;
    };
    expect(await next()).toBe(1);
    const ticket = { visitId: visit.id, ballId: ball.id, receivedAt: "2026-05-31T18:00:00.000Z" };
    await Promise.all([1, 2, 3].map(() => shop.ask("createTicket", { body: ticket })));
    expect(await next()).toBe(4);
    await reader?.cancel();
  });
});

/** All events of a stream, until it ends. */
async function events<Data>(response: Response): Promise<{ event: string; data: Data }[]> {
  expect(response.headers.get("content-type")).toContain("text/event-stream");
  const text = await response.text();
  return text
    .split("\n\n")
    .filter((block) => block.startsWith("event: "))
    .map((block) => ({ event: /^event: (.*)$/m.exec(block)?.[1] ?? "", data: JSON.parse(/^data: (.*)$/m.exec(block)?.[1] ?? "null") }));
}
