import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { API } from "#contract/routes/api";
import { USUAL } from "#server/config/configSchema";
import { VARIABLES } from "#server/config/environment";

const PAGE = readFileSync(new URL("../../docs/server.md", import.meta.url), "utf8");

test("the page names every route with its methods and who may use them, and none that is not there", () => {
  const rows = [...PAGE.matchAll(/^\| `(\/api\/[^`]*)` \| (.*) \|$/gm)].flatMap(([, path, what]) =>
    [...what.matchAll(/(\w+): `(GET|POST|PATCH|DELETE)`([¹²³]*)/g)].map(
      ([, least, method, marks]) => `${least} ${method} ${path} ${marks}`,
    ),
  );
  const marks = (match: boolean, key: string | undefined) =>
    `${match ? "¹" : ""}${key === "required" ? "³" : key === "allowed" ? "²" : ""}`;
  const table = Object.values(API).map(
    (route) =>
      `${route.least} ${route.method.toUpperCase()} ${route.path} ${marks("match" in route, "key" in route ? route.key : undefined)}`,
  );
  expect(rows.sort()).toEqual(table.sort());
});

test("the page names every variable, with its key and its usual value", () => {
  for (const { name, path } of VARIABLES) {
    const row = PAGE.split("\n").find((line) => line.includes(`\`${name}\``));
    expect(row, name).toContain(`\`${path.join(".")}\``);
    const usual = path.reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], USUAL);
    if (usual !== null) expect(row, name).toContain(String(usual));
  }
});
