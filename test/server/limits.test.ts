import { connect, type Socket } from "node:net";
import { setTimeout as sleep } from "node:timers/promises";
import { Hono } from "hono";
import { afterEach, describe, expect, test } from "vitest";
import { USUAL } from "#server/config/configSchema";
import { listen } from "#server/listen";
import { startServer } from "#server/startServer";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { testShop } from "../records/shop.ts";
import { type ShopServer, shopServer } from "./shopServer.ts";
import { cookieOf, peopleOfEveryRole } from "./signedIn.ts";

/* What one of many may take of a server, so that the others have theirs. */

describe("event streams", () => {
  let shop: ShopServer;
  afterEach(() => shop.end());

  test("one person takes so many; the others still listen, and one that leaves makes room", async () => {
    shop = await shopServer({ limits: { listeners: 40 } });
    await peopleOfEveryRole(shop);
    const [reader, owner] = [await cookieOf(shop, "reader"), await cookieOf(shop, "owner")];
    const hear = (cookie: string) => shop.raw("/api/queue/events", { headers: { cookie } });
    const taken = [];
    for (let i = 0; i < 60; i += 1) taken.push(await hear(reader));
    expect(taken.filter(({ status }) => status === 200)).toHaveLength(USUAL.limits.listenersPerPerson);
    const refused = taken.find(({ status }) => status === 429);
    expect(await refused?.json()).toMatchObject({ detail: "16 pages of this person listen already." });
    const heard = await hear(owner);
    expect(heard.status).toBe(200);
    await taken[0].body?.cancel();
    await expect.poll(async () => (await hear(reader)).status).toBe(200);
    await heard.body?.cancel();
  });
});

describe("bodies", () => {
  let shop: ShopServer;
  afterEach(() => shop.end());

  test("whoever is not signed in sends a name and a password, and no more", async () => {
    shop = await shopServer();
    await peopleOfEveryRole(shop);
    const signIn = (password: string) =>
      shop.raw("/api/session", {
        method: "POST",
        headers: { "content-type": "application/json", "content-length": String(password.length + 40) },
        body: JSON.stringify({ signInName: "owner", password }),
      });
    expect((await signIn("x".repeat(5000))).status).toBe(413);
    expect((await signIn("wrong")).status).toBe(403);
  });

  test("what is stated of bodies under way from one place has a bound, and room comes back", async () => {
    const shopOf = await testShop();
    shop = await shopServer({ shop: shopOf });
    const server = await startServer({
      config: { ...USUAL, port: 0 },
      records: shopOf.records,
      executor: inlineExecutor,
      files: new Map(),
      log: () => {},
      now: Date.now,
      nowMs: () => performance.now(),
      newId: () => "1",
      version: "0",
    });
    const port = Number(new URL(server.address).port);
    const statuses: string[] = [];
    const halves = Array.from({ length: 60 }, () => half(port, "/api/photos?ballId=x&of=other", "image/png", 11_000_000, statuses));
    // Three times eleven megabytes are more than one place may have.
    await expect.poll(() => statuses.length, { timeout: 5000 }).toBe(58);
    expect(new Set(statuses)).toEqual(new Set(["429"]));
    for (const socket of halves) socket.destroy();
    const again = async () =>
      (await fetch(`${server.address}/api/photos?of=other`, { method: "POST", headers: { "content-type": "image/png" }, body: "x" }))
        .status;
    await expect.poll(again).toBe(415);
    await server.stop();
  });
});

/** A request that says it is so long and sends only its beginning; what is answered is noted. */
function half(port: number, path: string, type: string, length: number, statuses: string[]): Socket {
  const socket = connect(port, "127.0.0.1");
  socket.on("error", () => undefined);
  socket.once("data", (chunk) => statuses.push(chunk.toString().slice(9, 12)));
  socket.write(`POST ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Type: ${type}\r\nContent-Length: ${length}\r\n\r\nbeginning`);
  return socket;
}

describe("connections", () => {
  test("one address has so many, and another is served", async () => {
    const paper = new Hono().get("*", (context) => context.text("page"));
    const server = await listen(paper, { port: 0, address: "127.0.0.1", name: null, certificate: null });
    const port = Number(new URL(server.address).port);
    let open = 0;
    const sockets = Array.from({ length: 700 }, () => {
      const socket = connect({ port, host: "127.0.0.1", localAddress: "127.0.0.2" });
      socket.on("error", () => undefined);
      socket.on("connect", () => {
        open += 1;
      });
      socket.on("close", () => {
        open -= 1;
      });
      return socket;
    });
    await sleep(500);
    expect(open).toBeLessThanOrEqual(500);
    expect(open).toBeGreaterThan(400);
    expect(await (await fetch(server.address)).text()).toBe("page");
    for (const socket of sockets) socket.destroy();
    await server.close(100);
  });

  test("silent ones from many addresses take nobody's room: the one that has waited longest gives way", async () => {
    const paper = new Hono().get("*", (context) => context.text("page"));
    const server = await listen(paper, { port: 0, address: "127.0.0.1", name: null, certificate: null });
    const port = Number(new URL(server.address).port);
    const sockets = Array.from({ length: 1300 }, (_, i) => {
      const socket = connect({ port, host: "127.0.0.1", localAddress: `127.0.0.${2 + (i % 4)}` });
      socket.on("error", () => undefined);
      return socket;
    });
    await sleep(800);
    for (let i = 0; i < 20; i += 1) expect(await (await fetch(server.address)).text()).toBe("page");
    for (const socket of sockets) socket.destroy();
    await server.close(100);
  });
});
