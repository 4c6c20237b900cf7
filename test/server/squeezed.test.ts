import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { API } from "#contract/routes/api";
import { encodingFor } from "#server/http/encodings";
import { squeezed } from "#server/http/squeezed";
import { pageFiles } from "#server/pageFiles";
import { type ShopServer, shopServer } from "./shopServer.ts";

const SCRIPT = `export const lane = "${"oil ".repeat(600)}";`;
const ROOM = "<!doctype html><p>page</p>";
let folder = "";
let shop: ShopServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "gritwright-squeezed-"));
  mkdirSync(join(folder, "assets"));
  writeFileSync(join(folder, "index.html"), ROOM);
  writeFileSync(join(folder, "assets", "lane-abc.js"), SCRIPT);
  writeFileSync(join(folder, "assets", "lane-abc.js.br"), brotliCompressSync(SCRIPT));
  writeFileSync(join(folder, "assets", "lane-abc.js.gz"), gzipSync(SCRIPT));
  shop = await shopServer({ files: pageFiles(folder) });
});
afterAll(async () => {
  await shop.end();
  rmSync(folder, { recursive: true });
});

const ask = (path: string, headers: Record<string, string> = {}) => shop.raw(path, { headers });
const bytesOf = async (response: Response) => new Uint8Array(await response.arrayBuffer());

describe("which encoding is sent (RFC 9110, 12.5.3)", () => {
  test.each([
    ["gzip, deflate, br, zstd", "br"],
    ["gzip, deflate", "gzip"],
    ["br;q=0.5, gzip;q=0.8", "gzip"],
    ["br;q=0, gzip", "gzip"],
    ["*", "br"],
    ["*;q=0", null],
    ["identity", null],
    ["identity;q=1, br;q=0.2", null],
    ["GZIP", "gzip"],
    ["", null],
    [undefined, null],
    ["br;q=nonsense", null],
  ] as const)("%s: %s", (header, encoding) => {
    expect(encodingFor(header)).toBe(encoding);
  });
});

describe("files of the page", () => {
  test("come squeezed as the asker prefers, and are the same file", async () => {
    for (const [accept, encoding, open] of [
      ["gzip, br", "br", brotliDecompressSync],
      ["gzip", "gzip", gunzipSync],
      ["identity", null, (bytes: Uint8Array) => bytes],
    ] as const) {
      const answer = await ask("/assets/lane-abc.js", { "accept-encoding": accept });
      expect([answer.status, answer.headers.get("content-encoding")]).toEqual([200, encoding]);
      expect(answer.headers.get("content-type")).toBe("text/javascript; charset=utf-8");
      const sent = await bytesOf(answer);
      expect(Buffer.from(open(sent)).toString()).toBe(SCRIPT);
      expect(sent.length < 200).toBe(encoding !== null);
    }
  });

  test("what lies between knows that answers differ, and each has a tag of its own by which it is not sent again", async () => {
    const tags = new Set<string>();
    for (const accept of ["br", "gzip", "identity"]) {
      const answer = await ask("/assets/lane-abc.js", { "accept-encoding": accept });
      expect(answer.headers.get("vary")).toBe("Accept-Language, Accept-Encoding");
      const tag = answer.headers.get("etag") ?? "";
      tags.add(tag);
      const again = await ask("/assets/lane-abc.js", { "accept-encoding": accept, "if-none-match": tag });
      expect([again.status, again.headers.get("etag"), (await bytesOf(again)).length]).toEqual([304, tag, 0]);
      const other = await ask("/assets/lane-abc.js", { "accept-encoding": accept === "br" ? "gzip" : "br", "if-none-match": tag });
      expect(other.status).toBe(200);
    }
    expect(tags.size).toBe(3);
  });

  test("a part that is asked for comes as the whole: parts of what is squeezed are nobody's", async () => {
    for (const accept of ["br", "identity"]) {
      const answer = await ask("/assets/lane-abc.js", { "accept-encoding": accept, range: "bytes=0-3" });
      expect([answer.status, answer.headers.get("accept-ranges"), answer.headers.get("content-range")]).toEqual([200, "none", null]);
      expect((await bytesOf(answer)).length).toBeGreaterThan(4);
    }
  });

  test("what the build has not squeezed comes as it is, and what it has is no file of its own", async () => {
    const room = await ask("/", { "accept-encoding": "br" });
    expect([room.headers.get("content-encoding"), await room.text()]).toEqual([null, ROOM]);
    expect((await ask("/assets/lane-abc.js.br")).status).toBe(404);
  });
});

describe("documents", () => {
  const LONG = JSON.stringify({ said: "oil ".repeat(600) });

  test("come squeezed where they are long, and say that answers differ", async () => {
    const answer = await ask("/api/openapi.json", { "accept-encoding": "br" });
    expect([answer.headers.get("content-encoding"), answer.headers.get("vary")]).toEqual(["br", "Accept-Encoding"]);
    expect(answer.headers.get("content-type")).toBe("application/json");
    const whole = await (await ask("/api/openapi.json")).json();
    expect(JSON.parse(brotliDecompressSync(await bytesOf(answer)).toString())).toEqual(whole);
    expect((await ask("/api/session", { "accept-encoding": "br" })).headers.get("content-encoding")).toBeNull();
  });

  test("of the door never are, nor what answers a change, nor what is short", async () => {
    const long = async (name: keyof typeof API) => (await squeezed(LONG, API[name], "br, gzip")).encoding;
    const reads = (Object.keys(API) as (keyof typeof API)[]).filter((name) => API[name].method === "get");
    const plain: string[] = [];
    for (const name of reads) if ((await long(name)) === null) plain.push(API[name].path);
    expect(plain.length).toBeGreaterThan(2);
    for (const path of plain) expect(path).toMatch(/^\/api\/(session|sign-ins|people)/);
    for (const [, route] of Object.entries(API)) {
      if (route.method !== "get") expect((await squeezed(LONG, route, "br")).encoding, route.path).toBeNull();
    }
    expect((await squeezed("{}", API[reads[0]], "br")).encoding).toBeNull();
  });
});
