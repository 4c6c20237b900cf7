import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Hono } from "hono";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { listen } from "#server/listen";
import { browserCommand } from "#server/openBrowser";
import { pageFiles } from "#server/pageFiles";
import { type ShopServer, shopServer } from "./shopServer.ts";

let folder = "";
let shop: ShopServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gritwright-page-"));
  mkdirSync(join(folder, "assets"));
  writeFileSync(join(folder, "index.html"), "<!doctype html><p>page</p>");
  writeFileSync(join(folder, "assets", "index-abc.js"), "export {};");
  writeFileSync(join(folder, ".built"), "");
  shop = await shopServer({ files: pageFiles(folder) });
});
afterAll(async () => {
  await shop.end();
  rmSync(folder, { recursive: true });
});

const ask = (path: string, headers: Record<string, string> = {}) => shop.raw(path, { headers });

describe("the server of the page", () => {
  test("serves files under their type, and every room as the page", async () => {
    const script = await ask("/assets/index-abc.js");
    expect([script.status, script.headers.get("content-type")]).toEqual([200, "text/javascript; charset=utf-8"]);
    for (const room of ["/", "/plan"]) expect(await (await ask(room)).text()).toContain("<p>page</p>");
  });

  test("a file that is not there is not the page; nothing outside the folder and no unknown kind is served", async () => {
    for (const path of ["/assets/none.js", "/.built", "/../../etc/passwd.txt", "/%2e%2e/%2e%2e/package.json"]) {
      expect((await ask(path)).status, path).toBe(404);
    }
  });

  test("lets nobody else's scripts in, no frame around it, no guessing of types", async () => {
    const { headers } = await ask("/plan");
    const policy = Object.fromEntries((headers.get("content-security-policy") ?? "").split("; ").map((part) => [part.split(" ")[0], part]));
    expect(policy["default-src"]).toBe("default-src 'none'");
    expect(policy["script-src"]).toBe("script-src 'self' 'wasm-unsafe-eval'");
    expect(policy["frame-ancestors"]).toBe("frame-ancestors 'none'");
    expect(headers.get("x-content-type-options")).toBe("nosniff");
  });

  test("answers to this machine's own names only, so that no foreign page can point its name here", async () => {
    expect((await ask("/plan", { host: "shop.example:4780" })).status).toBe(421);
    expect((await ask("/plan", { host: "localhost:4780" })).status).toBe(200);
  });

  test("a file that has not changed is not sent again", async () => {
    const tag = (await ask("/plan")).headers.get("etag") ?? "";
    const again = await ask("/plan", { "if-none-match": tag });
    expect([again.status, await again.text()]).toEqual([304, ""]);
  });
});

describe("listening", () => {
  const at = (port: number | null) => ({ port, address: "127.0.0.1", name: null, certificate: null });
  const paper = new Hono().get("*", (context) => context.text("page"));

  test("is reached at the address it prints, on this machine only; a port that was asked for and is taken is refused", async () => {
    const first = await listen(paper, at(0));
    expect(first.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    expect(await (await fetch(`${first.address}/plan`)).text()).toBe("page");
    const port = Number(first.address.split(":").at(-1));
    await expect(listen(paper, at(port))).rejects.toMatchObject({ code: "EADDRINUSE" });
    await first.close(1000);
  });

  test("without a port asked for, a second server finds another", async () => {
    const servers = [await listen(paper, at(null)), await listen(paper, at(null))];
    expect(new Set(servers.map((s) => s.address)).size).toBe(2);
    await Promise.all(servers.map((s) => s.close(1000)));
  });

  test("when it stops, what is under way ends first, and what does not end is cut off in time", async () => {
    const slow = new Hono().get("/:ms", async (context) => {
      await new Promise((resolve) => setTimeout(resolve, Number(context.req.param("ms"))));
      return context.text("done");
    });
    const server = await listen(slow, at(0));
    const [soon, never] = [fetch(`${server.address}/150`), fetch(`${server.address}/60000`)];
    never.catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 50));
    const from = performance.now();
    await server.close(600);
    expect(await (await soon).text()).toBe("done");
    await expect(never).rejects.toThrow();
    expect(performance.now() - from).toBeLessThan(3000);
  });
});

describe("opening the browser", () => {
  test.each([
    ["linux", { DISPLAY: ":0" }, ["xdg-open"]],
    ["linux", { WAYLAND_DISPLAY: "wayland-0" }, ["xdg-open"]],
    ["linux", {}, null],
    ["linux", { DISPLAY: ":0", CI: "true" }, null],
    ["darwin", {}, ["open"]],
    ["win32", {}, ["cmd", "/c", "start", ""]],
  ] as const)("on %s with %o: %o", (platform, environment, command) => {
    expect(browserCommand(platform, environment)).toEqual(command);
  });
});
