import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { accessRoutes } from "#contract/routes/access";
import { API } from "#contract/routes/api";
import { paramNames, type Route } from "#contract/routes/route";
import { type Counter, counter } from "./countedWork.ts";
import { HOSTILE } from "./hostileJson.ts";
import { type ShopServer, shopServer } from "./shopServer.ts";

/*
 * Twice as much of what is hostile makes at most twice the work, on every route there is; and a little more for what a doubled count takes to be written
 * down. Work is counted, not timed: how long it takes stands in what `npm run chaos` writes.
 */

const MOST = 2.1;
/** Of keys: fewer than are read, and more. */
const KEYS = [400, 1100];
const OTHERS = [700];

let server: ShopServer | undefined;
let counted: Counter;
beforeAll(() => {
  counted = counter();
});
afterAll(async () => {
  counted.end();
  await server?.end();
});

/** What gives a way in is taken in some of these bodies, and closes the shop to the next route. */
async function newShop(): Promise<void> {
  await server?.end();
  server = await shopServer();
}

const ROUTES = Object.entries(API) as [string, Route][];

async function ask(
  route: Route,
  init: { readonly body?: string; readonly headers?: Record<string, string>; readonly search?: string; readonly param?: string },
) {
  const params = paramNames(route.path);
  const path = params.reduce((at, param) => at.replace(`:${param}`, encodeURIComponent(init.param ?? "none")), route.path as string);
  const headers = { "content-type": "application/json", "if-match": '"1"', "idempotency-key": crypto.randomUUID(), ...init.headers };
  if (server === undefined) throw new TypeError("no server");
  const response = await server.raw(`${path}${init.search ?? ""}`, {
    method: route.method.toUpperCase(),
    headers,
    ...(init.body === undefined ? {} : { body: init.body }),
  });
  if (response.status === 200 && route.answer.kind === "events") await response.body?.cancel();
  else await response.arrayBuffer();
  expect(response.status, `${route.method} ${route.path}`).not.toBe(500);
}

/** How much more work the second is than the first, once everything that is made once is there. */
async function growth(first: () => Promise<void>, second: () => Promise<void>): Promise<number> {
  await first();
  const [small, large] = [await counted.of(first), await counted.of(second)];
  return large / small;
}

describe.each(ROUTES.filter(([, { body }]) => body?.kind === "json"))("%s", (name, route) => {
  beforeAll(async () => {
    if (server === undefined || name in accessRoutes || (await server.records.accounts.any())) await newShop();
  });

  test.each(Object.entries(HOSTILE))("%s", async (kind, hostile) => {
    if (route.body?.kind !== "json") throw new TypeError("only JSON is asked with here");
    const { schema } = route.body;
    for (const size of kind.includes("keys") ? KEYS : OTHERS) {
      const [one, two] = [size, 2 * size].map((each) => hostile(schema, each));
      // Where a body has nothing that could be more, only the state of the shop would differ.
      if (two.length < 1.5 * one.length) continue;
      expect(
        await growth(
          () => ask(route, { body: one }),
          () => ask(route, { body: two }),
        ),
        `${size}`,
      ).toBeLessThanOrEqual(MOST);
    }
  });
});

/** Around 16 kB: so much Node takes of an address and headers together (`--max-http-header-size`). */
const LONG = 3500;
const ADDRESSES: Readonly<Record<string, (size: number) => Parameters<typeof ask>[1]>> = {
  "unknown words in the address": (size) => ({ search: `?${Array.from({ length: size / 7 }, (_, i) => `k${i}=1`).join("&")}` }),
  "one word in the address again and again": (size) => ({ search: `?${"limit=1&".repeat(size / 8)}` }),
  "a long word in the address": (size) => ({ search: `?words=${"a+".repeat(size / 2)}&after=${"x".repeat(size)}` }),
  "a long id": (size) => ({ param: "a".repeat(size) }),
  "many cookies": (size) => ({ headers: { cookie: Array.from({ length: size / 8 }, (_, i) => `c${i}=1`).join("; ") } }),
  "a long cookie": (size) => ({ headers: { cookie: `gritwright=${"x".repeat(size)}` } }),
  "long headers": (size) => ({
    headers: { "if-match": '"1",'.repeat(size / 4), "idempotency-key": "x".repeat(size), "content-type": `${"a;".repeat(size / 2)}` },
  }),
};

describe("on every route", () => {
  beforeAll(newShop);

  // All together: what grew by the square on one of them would outweigh the others.
  test.each(Object.entries(ADDRESSES))("%s", async (_, given) => {
    const onEach = async (size: number): Promise<void> => {
      for (const [, route] of ROUTES) await ask(route, given(size));
    };
    expect(
      await growth(
        () => onEach(LONG),
        () => onEach(2 * LONG),
      ),
    ).toBeLessThanOrEqual(MOST);
  });
});

describe("what is told of it", () => {
  beforeAll(newShop);
  const asked = async (body: string): Promise<{ readonly status: number; readonly text: string }> => {
    const headers = { "content-type": "application/json" };
    const response = await server?.raw("/api/session", { method: "POST", headers, body });
    return { status: response?.status ?? 0, text: (await response?.text()) ?? "" };
  };
  const keys = (count: number): string => `{${Array.from({ length: count }, (_, i) => `"key${i}":0`).join()}}`;

  test("nested 5,000 deep: 400, with a sentence", async () => {
    for (const body of [`${"[".repeat(5000)}${"]".repeat(5000)}`, `${'{"signInName":'.repeat(5000)}0${"}".repeat(5000)}`]) {
      const { status, text } = await asked(body);
      expect(status).toBe(400);
      expect(JSON.parse(text).detail).toBe("It is nested more than 32 levels deep; nothing that is meant here is.");
    }
  });

  test("more problems than are told are counted", async () => {
    const { status, text } = await asked(keys(802));
    expect(status).toBe(422);
    const messages = JSON.parse(text).problems.map(({ message }: { message: string }) => message);
    // Two that are missing are told with them.
    expect(messages).toHaveLength(21);
    expect(messages.at(-1)).toBe("and 784 more.");
  });

  test("more keys than are read, and more values, are refused as such", async () => {
    const { status, text } = await asked(keys(8000));
    expect(status).toBe(422);
    expect(JSON.parse(text).problems).toEqual([expect.objectContaining({ message: "has 8,000 keys; at most 1,000 are read." })]);
    const many = await asked(`[${"0,".repeat(150_000)}0]`);
    expect(JSON.parse(many.text).problems[0].message).toBe("There are more than 100,000 values in it; no more are read.");
  });

  test("a long value and a long key are not sent back whole", async () => {
    const { text } = await asked(`{"${"k".repeat(100_000)}":"${"v".repeat(100_000)}","signInName":"${"x".repeat(100_000)}"}`);
    expect(text.length).toBeLessThan(6000);
  });
});
