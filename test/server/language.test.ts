import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { acceptedLanguages, inLanguage } from "#server/http/language";
import { type PageFile, pageInLanguages } from "#server/pageFiles";
import { type ShopServer, shopServer } from "./shopServer.ts";

const html = (text: string): PageFile => ({ bytes: new TextEncoder().encode(text), type: "text/html; charset=utf-8", tag: `"${text}"` });
const FILES = new Map([
  ["/index.html", html("english")],
  ["/assets/en.js", html("english bundle")],
  [inLanguage("de", "/index.html"), html("deutsch")],
  [inLanguage("de", "/assets/de.js"), html("deutsches Bündel")],
]);

let shop: ShopServer;
beforeAll(async () => {
  shop = await shopServer({ files: FILES });
});
afterAll(() => shop.end());

const said = async (path: string, accept?: string) =>
  (await shop.raw(path, { headers: accept === undefined ? {} : { "accept-language": accept } })).text();

describe("the page's language", () => {
  test("as the address asks, else as the browser prefers, else English; a room is in the same language", async () => {
    expect(await said("/")).toBe("english");
    expect(await said("/", "fr, de-CH;q=0.8, en;q=0.5")).toBe("deutsch");
    expect(await said("/tickets/1", "de")).toBe("deutsch");
    expect(await said("/?language=en", "de")).toBe("english");
    expect(await said("/?language=xx", "de")).toBe("deutsch");
  });

  test("once the shop has chosen, for every browser; the address may still ask otherwise", async () => {
    const settings = await shop.ask("getSettings");
    expect(settings.body.language).toBeNull();
    const chosen = await shop.ask("changeSettings", {
      body: { language: "de" },
      headers: { "if-match": settings.headers.get("etag") ?? "" },
    });
    expect(chosen.body.language).toBe("de");
    expect(await said("/", "en")).toBe("deutsch");
    expect(await said("/?language=en")).toBe("english");
  });

  test("a page that is open goes on with its own bundles", async () => {
    expect(await said("/assets/de.js", "en")).toBe("deutsches Bündel");
    expect(await said("/assets/en.js", "de")).toBe("english bundle");
    expect((await shop.raw("/assets/no.js")).status).toBe(404);
  });

  test("an answer says in which language it is", async () => {
    const answer = await shop.raw("/", { headers: { "accept-language": "de" } });
    expect(answer.headers.get("content-language")).toBe("de");
  });

  test("one page begins in each language by a file of its own", () => {
    const folder = mkdtempSync(join(tmpdir(), "gritwright-page-"));
    mkdirSync(join(folder, "web"));
    for (const [name, text] of [
      ["index.html", "english"],
      ["index.de.html", "deutsch"],
    ])
      writeFileSync(join(folder, "web", name), text);
    const files = pageInLanguages(folder);
    expect(Buffer.from(files.get(inLanguage("de", "/index.html"))?.bytes ?? []).toString()).toBe("deutsch");
    expect(Buffer.from(files.get("/index.html")?.bytes ?? []).toString()).toBe("english");
    rmSync(folder, { recursive: true });
  });

  test("Accept-Language is read as RFC 9110 has it", () => {
    expect(acceptedLanguages("da, en-gb;q=0.8, en;q=0.7")).toEqual(["da", "en", "en"]);
    expect(acceptedLanguages("en;q=0, de;q=0.3, fr;q=0.9")).toEqual(["fr", "de"]);
    expect(acceptedLanguages("")).toEqual([]);
  });
});
