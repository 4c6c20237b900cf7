import { hc } from "hono/client";
import { afterAll, beforeAll, describe, expect, expectTypeOf, test } from "vitest";
import type { Bowler } from "#contract/records/bowler";
import { API } from "#contract/routes/api";
import type { Api } from "#contract/routes/client";
import { openApiPath } from "#contract/routes/openApi";
import { paramNames, type Route } from "#contract/routes/route";
import { HOST, type ShopServer, shopServer } from "./shopServer.ts";

const METHODS = new Set(["GET", "POST", "PATCH", "DELETE"]);

let shop: ShopServer;
beforeAll(async () => {
  shop = await shopServer();
});
afterAll(() => shop.end());

const routes = Object.entries<Route>(API);

describe("the description and the router", () => {
  test("name the same routes, each once", async () => {
    const { body } = await shop.ask("describe");
    const described = Object.entries<object>(body.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    const mounted = shop.mounted
      .filter(({ path, method }) => !path.includes("*") && METHODS.has(method))
      .map(({ path, method }) => `${method} ${openApiPath(path)}`);
    expect([...new Set(mounted)].sort()).toEqual(described.sort());
    expect(new Set(described).size).toBe(routes.length);
  });

  test("is OpenAPI 3.1 with an answer, problems, every parameter and every header that is needed", async () => {
    const { body } = await shop.ask("describe");
    for (const [name, route] of routes) {
      const operation = body.paths[openApiPath(route.path)][route.method];
      expect(operation.operationId).toBe(name);
      expect(Object.keys(operation.responses)).toEqual([String(route.answer.status), "default"]);
      const parameters: { name: string; in: string; required: boolean; schema: object }[] = operation.parameters;
      const ofPath = parameters.filter((parameter) => parameter.in === "path");
      expect(ofPath.map((parameter) => [parameter.name, parameter.required])).toEqual(paramNames(route.path).map((param) => [param, true]));
      const headers = parameters.filter((parameter) => parameter.in === "header" && parameter.required).map((parameter) => parameter.name);
      expect(headers.includes("If-Match")).toBe(route.match === true);
      expect(headers.includes("Idempotency-Key")).toBe(route.key === "required");
      expect(operation.requestBody === undefined).toBe(route.body === undefined);
      expect(route.does).not.toMatch(/\.$/);
    }
  });

  test("a path's parameters are described, and only those", () => {
    for (const [name, route] of routes) expect(Object.keys(route.params?.shape ?? {}), name).toEqual(paramNames(route.path));
  });
});

test("the client's types come from the table alone, and its requests are understood", async () => {
  const fetchHere: typeof fetch = (input, init) =>
    shop.raw(new URL(String(input)).pathname, { ...init, headers: { ...headersOf(init), host: HOST } });
  const client = hc<Api>("http://127.0.0.1:4780", { fetch: fetchHere });
  const made = await client.api.bowlers.$post({ json: { name: "Ottilie Sandgrouse" } });
  expect(made.status).toBe(201);
  if (!made.ok) throw new Error("not made");
  const bowler = await made.json();
  expectTypeOf(bowler).toEqualTypeOf<Bowler>();
  const given = await client.api.bowlers[":id"].$get({ param: { id: bowler.id } });
  expect(await given.json()).toEqual(bowler);
});

function headersOf(init: RequestInit | undefined): Record<string, string> {
  return Object.fromEntries(new Headers(init?.headers).entries());
}
