import { afterAll, beforeAll, expect, test } from "vitest";
import { API } from "#contract/routes/api";
import type { Route } from "#contract/routes/route";
import { PNG } from "../records/pictures.ts";
import { onTheCounter, type TestShop, testShop } from "../records/shop.ts";
import { type ShopServer, shopServer } from "./shopServer.ts";

/* Whatever is asked of the server after an erasure says nothing of who was erased. */

const TRACES = ["Sandgrouse", "sandgrouse", "Ottilie", "(555)", "0101234", "Tuesdays", "Hooks early"];
/** Streams do not end; these hand out what was made before. */
const LEFT_OUT = new Set(["backupBytes"]);

let kept: TestShop;
let shop: ShopServer;
beforeAll(async () => {
  kept = await testShop();
  shop = await shopServer({ shop: kept });
});
afterAll(() => shop.end());

const READING = Object.entries(API as Readonly<Record<string, Route>>).filter(
  ([name, { method, answer }]) => method === "get" && answer.kind !== "events" && !LEFT_OUT.has(name),
) as [keyof typeof API, Route][];

/** Everything that reading routes answer; those of one thing for every thing there is. */
async function allAnswers(): Promise<{ where: string; text: string }[]> {
  const answers: { where: string; text: string }[] = [];
  const ids = new Map<string, string[]>();
  const asked = async (name: keyof typeof API, path: string, params: Record<string, string>): Promise<void> => {
    const query = name === "search" ? { words: "ottilie" } : name === "takings" ? { from: "2026-05-01", to: "2026-06-30" } : {};
    const reply = await shop.ask(name, { params, query: query as Record<string, string> });
    answers.push({ where: `${path} ${reply.status}`, text: Buffer.from(reply.bytes).toString("latin1") });
    const items = (reply.body as { items?: { id?: string }[] } | null)?.items ?? [];
    if (reply.status === 200)
      ids.set(
        path,
        items.flatMap(({ id }) => (id === undefined ? [] : [id])),
      );
  };
  for (const [name, { path }] of READING.filter(([, { path }]) => !path.includes(":"))) await asked(name, path, {});
  for (const [name, { path }] of READING.filter(([, { path }]) => path.includes("/:id")))
    for (const id of ids.get(path.slice(0, path.indexOf("/:id"))) ?? []) await asked(name, path, { id });
  return answers;
}

test("no route that reads anything says who was erased", async () => {
  const { records, by } = kept;
  const { bowler, ball, ticket, visit } = await onTheCounter(kept);
  const at = "2026-05-31T19:00:00.000Z";
  await records.visits.change(visit.id, { charges: [{ what: "Ottilie's resurface", eachCents: 2500 }] }, { by, expectedVersion: 1 });
  await records.tickets.change(ticket.id, { stages: [{ what: "as for Sandgrouse" }] }, { by, expectedVersion: 1 });
  await records.readings.create({ ballId: ball.id, at, when: "after", place: "Ottilie's side", how: "tester", raUm: 0.4 }, { by });
  await records.photos.add({ ticketId: ticket.id, of: "condition", note: "Ottilie" }, PNG, { by });
  await records.stagesDone.create({ ticketId: ticket.id, personId: by, initials: "T", doneAt: at, what: "Sandgrouse 2000" }, { by });
  const before = await allAnswers();
  // The test sees them while they are there.
  expect(before.filter(({ text }) => TRACES.some((trace) => text.includes(trace))).length).toBeGreaterThan(10);
  expect(before.length).toBeGreaterThan(30);
  await shop.ask("erasePersonalData", { params: { id: bowler.id } });
  const told = (await allAnswers()).flatMap(({ where, text }) =>
    TRACES.filter((trace) => text.includes(trace)).map((trace) => `${trace}: ${where}`),
  );
  expect(told).toEqual([]);
});
