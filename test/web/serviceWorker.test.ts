import { beforeEach, describe, expect, it, vi } from "vitest";

/* The page's service worker in a browser that is not there: what it answers when the browser cannot get at what it keeps. */

interface Fetching {
  readonly request: { readonly url: string; readonly method: string; readonly mode: string };
  respondWith(answer: Promise<Response>): void;
  waitUntil(work: Promise<unknown>): void;
}

const ORIGIN = "http://shop.example";
const heard = new Map<string, (event: Fetching) => void>();
const FROM_SHOP = () => new Response("{}", { headers: { "content-type": "application/json" } });

vi.stubGlobal("__PAGE_FILES__", { version: "1", files: [] });
vi.stubGlobal("self", {
  location: { origin: ORIGIN },
  addEventListener: (name: string, hear: (event: Fetching) => void) => heard.set(name, hear),
});
await import("../../src/web/offline/serviceWorker.ts");

beforeEach(() => {
  vi.stubGlobal("fetch", async () => FROM_SHOP());
});

/** What the worker answers, and what it still does behind the answer. */
async function asked(path: string, mode = "cors"): Promise<{ readonly answer: Response; readonly behind: readonly Promise<unknown>[] }> {
  const behind: Promise<unknown>[] = [];
  let given: Promise<Response> | null = null;
  heard.get("fetch")?.({
    request: { url: `${ORIGIN}${path}`, method: "GET", mode },
    respondWith: (answer) => {
      given = answer;
    },
    waitUntil: (work) => behind.push(work),
  });
  if (given === null) throw new Error("The worker left this to the network.");
  return { answer: await given, behind };
}

describe("the service worker", () => {
  it.each(["/assets/App-B9NSl40Y.js", "/api/tickets/0193"])(
    "takes %s from the shop where the browser cannot open what it keeps",
    async (path) => {
      vi.stubGlobal("caches", { open: () => Promise.reject(new DOMException("internal", "UnknownError")) });
      expect((await asked(path)).answer.ok).toBe(true);
    },
  );

  it("gives the shop's answer before it is kept, and keeps it behind that", async () => {
    const kept: string[] = [];
    let write = (): void => {};
    const isWritten = new Promise<void>((resolve) => {
      write = resolve;
    });
    vi.stubGlobal("caches", {
      open: async () => ({
        match: async () => undefined,
        delete: async () => false,
        put: (url: string) => isWritten.then(() => kept.push(url)),
        keys: async () => [],
      }),
    });
    const { answer, behind } = await asked("/api/tickets/0193");
    expect(await answer.json()).toEqual({});
    expect(kept).toEqual([]);
    write();
    await Promise.all(behind);
    expect(kept).toEqual([`${ORIGIN}/api/tickets/0193`]);
  });

  it("opens the page in the language that it was last opened in, once the shop is away; without one as it was installed", async () => {
    const lies = new Map([
      ["/index.html", "english"],
      ["/index.de.html", "deutsch"],
    ]);
    vi.stubGlobal("caches", {
      open: async () => ({
        match: async (key: string) => (lies.has(key) ? new Response(lies.get(key)) : undefined),
        put: async (key: string, response: Response) => void lies.set(key, await response.text()),
      }),
    });
    const away = () => Promise.reject(new TypeError("Failed to fetch"));
    vi.stubGlobal("fetch", away);
    expect(await (await asked("/tickets/0193", "navigate")).answer.text()).toBe("english");
    vi.stubGlobal("fetch", async () => new Response("jetzt", { headers: { "content-language": "de" } }));
    const { answer, behind } = await asked("/", "navigate");
    expect(await answer.text()).toBe("jetzt");
    await Promise.all(behind);
    vi.stubGlobal("fetch", away);
    expect(await (await asked("/tickets/0193", "navigate")).answer.text()).toBe("deutsch");
  });

  it("keeps nothing that was asked for one person once another has had everything thrown away", async () => {
    let lies = new Map<string, Response>();
    const thrown = (): void => {
      lies = new Map();
    };
    vi.stubGlobal("caches", {
      open: async () => {
        const mine = lies;
        return {
          match: async (url: string) => mine.get(url),
          delete: async (url: string) => mine.delete(url),
          put: async (url: string, response: Response) => void mine.set(url, response),
          keys: async () => [],
        };
      },
    });
    vi.stubGlobal("fetch", async () => {
      thrown();
      return FROM_SHOP();
    });
    await Promise.all((await asked("/api/bowlers/0193")).behind);
    expect(lies.size).toBe(0);
    vi.stubGlobal("fetch", async () => FROM_SHOP());
    await Promise.all((await asked("/api/bowlers/0193")).behind);
    expect(lies.size).toBe(1);
  });
});
