import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import type { IncomingMessage } from "node:http";
import { request } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { connect } from "node:tls";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Config, USUAL } from "#server/config/configSchema";
import { certificateFor, hostOf, reachedOf } from "#server/reached";
import { type RunningServer, startServer } from "#server/startServer";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { type TestShop, testShop } from "../records/shop.ts";
import { certificateIn, type TestCertificate } from "./certificate.ts";
import { PASSWORDS } from "./signedIn.ts";

let folder: string;
let shop: TestShop;
let certificate: TestCertificate;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gritwright-tls-"));
  certificate = certificateIn(folder, "shop.example");
  shop = await testShop();
});
afterAll(async () => {
  await shop.end();
  rmSync(folder, { recursive: true });
});

const configOf = (change: Partial<Config>): Config => ({ ...USUAL, port: 0, ...change });
const encrypted = () => ({ cert: certificate.cert, key: certificate.key, names: ["shop.example"] });

function started(change: Partial<Config>): Promise<RunningServer> {
  return startServer({
    config: configOf(change),
    records: shop.records,
    executor: inlineExecutor,
    files: new Map(),
    log: () => undefined,
    now: Date.now,
    nowMs: () => performance.now(),
    newId: () => "1",
    version: "0.0.0-test",
  });
}

describe("on an address that others reach the server", () => {
  test("does not start without a certificate, without a password, with half a certificate, or without its names", async () => {
    const everywhere = { address: "0.0.0.0" };
    await expect(started(everywhere)).rejects.toThrow(/only with a certificate/);
    await expect(started({ address: "192.0.2.10" })).rejects.toThrow(/192\.0\.2\.10.*only with a certificate/);
    await expect(started({ ...everywhere, cert: certificate.cert })).rejects.toThrow(/both --cert and --key/);
    await expect(started({ ...everywhere, ...encrypted(), names: [] })).rejects.toThrow(/give --name/);
    await expect(started({ ...everywhere, ...encrypted() })).rejects.toThrow(/only when an owner has a password/);
    await expect(started({ ...encrypted(), key: join(folder, "none.pem") })).rejects.toThrow(/none\.pem: ENOENT/);
  });

  test("starts encrypted once an owner has a password; speaks TLS 1.2 and later, and no HTTP without it", async () => {
    const { accounts } = shop.records;
    await accounts.open(shop.by, { signInName: "owner", role: "owner", password: PASSWORDS.owner }, shop.by);
    const server = await started({ address: "0.0.0.0", ...encrypted() });
    const port = Number(new URL(server.address).port);
    expect(server.address).toBe(`https://shop.example:${port}`);
    expect(await statusOf(port, "/api/health")).toBe(200);
    expect(await statusOf(port, "/api/balls")).toBe(401);
    expect(await statusOf(port, "/api/health", "other.example")).toBe(421);
    await expect(fetch(`http://127.0.0.1:${port}/api/health`)).rejects.toThrow();
    await expect(protocol(port, "TLSv1.1")).rejects.toThrow();
    expect([await protocol(port, "TLSv1.2"), await protocol(port, "TLSv1.3")]).toEqual(["TLSv1.2", "TLSv1.3"]);
    await server.stop();
  });
});

test("on this machine alone neither is asked for", async () => {
  const empty = await testShop();
  for (const address of ["127.0.0.1", "127.8.0.1", "::1", "localhost"]) {
    expect(await certificateFor(configOf({ address }), empty.records)).toBeNull();
    // A machine that reaches itself by another of its addresses reaches it by that name.
    expect(reachedOf(configOf({ address }))).toEqual({ isEncrypted: false, isOnNetwork: false, names: [hostOf(address)] });
  }
  expect(reachedOf(configOf({ address: "192.0.2.10", cert: "c" }))).toEqual({
    isEncrypted: true,
    isOnNetwork: true,
    names: ["192.0.2.10"],
  });
  expect(reachedOf(configOf({ address: "fd00::10", cert: "c" })).names).toEqual(["[fd00::10]"]);
  await empty.end();
});

async function statusOf(port: number, path: string, host = "shop.example"): Promise<number | undefined> {
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    const options = {
      host: "127.0.0.1",
      port,
      path,
      servername: "shop.example",
      ca: readFileSync(certificate.cert),
      headers: { host: `${host}:${port}` },
      agent: false,
    };
    request(options, resolve).on("error", reject).end();
  });
  answer.resume();
  return answer.statusCode;
}

function protocol(port: number, version: "TLSv1.1" | "TLSv1.2" | "TLSv1.3"): Promise<string | null> {
  return new Promise((resolve, reject) => {
    const options = {
      host: "127.0.0.1",
      port,
      servername: "shop.example",
      ca: readFileSync(certificate.cert),
      minVersion: version,
      maxVersion: version,
    };
    const socket = connect(options, () => {
      resolve(socket.getProtocol());
      socket.destroy();
    });
    socket.on("error", reject);
  });
}
