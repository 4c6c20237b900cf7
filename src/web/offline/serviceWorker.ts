import { answerFrom } from "./whatToDo.ts";

/*
 * Keeps the page going while the shop's server is away: its own files from the time it was installed, and what was last read from the shop. It writes
 * nothing: writes wait in the page's outbox. The list of files is put in by the build.
 */

declare const __PAGE_FILES__: { readonly version: string; readonly files: readonly string[] };

const worker = self as unknown as ServiceWorkerGlobalScope;
const PAGE_CACHE = `gritwright-page-${__PAGE_FILES__.version}`;
const READ_CACHE = "gritwright-read";
/** Under which it is kept in which language the page was last opened; no file of the page is called so. */
const LANGUAGE = "/language-of-the-page";
/** Answers that are kept at most; the oldest go first. */
const MOST_READ = 1500;

worker.addEventListener("install", (event) => {
  event.waitUntil(caches.open(PAGE_CACHE).then((cache) => cache.addAll([...__PAGE_FILES__.files])));
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name !== PAGE_CACHE && name !== READ_CACHE).map((name) => caches.delete(name))))
      .then(() => worker.clients.claim()),
  );
});

/** The page says one thing only: somebody else is here now. */
worker.addEventListener("message", (event) => event.waitUntil(caches.delete(READ_CACHE)));

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== worker.location.origin) return;
  switch (answerFrom(request.method, url.pathname, request.mode === "navigate")) {
    case "page":
      event.respondWith(opened(request, (work) => event.waitUntil(work)));
      return;
    case "file":
      event.respondWith(fromPage(url.pathname).then((kept) => (kept.ok ? kept : fetch(request))));
      return;
    case "read":
      event.respondWith(read(request, (work) => event.waitUntil(work)));
      return;
    case "forget":
      event.respondWith(forgetAfter(request));
      return;
    case "network":
  }
});

/** The shop's page; where the shop is away the page as it was installed, in the language that it was last opened in. */
async function opened(request: Request, behind: (work: Promise<void>) => void): Promise<Response> {
  try {
    const answer = await fetch(request);
    const language = answer.headers.get("content-language");
    if (answer.ok && language !== null) behind(keepLanguage(language));
    return answer;
  } catch {
    const cache = await caches.open(PAGE_CACHE).catch(() => null);
    const language = (await (await cache?.match(LANGUAGE))?.text()) ?? "";
    const begins = await fromPage(`/index.${language}.html`);
    return begins.ok ? begins : fromPage("/index.html");
  }
}

/** A browser that cannot get at what it keeps opens the page in the language that it was installed in. */
async function keepLanguage(language: string): Promise<void> {
  const cache = await caches.open(PAGE_CACHE).catch(() => null);
  await cache?.put(LANGUAGE, new Response(language)).catch(() => undefined);
}

/** A file of the page as it was installed; an error where it is not there, or where the browser cannot get at what it keeps. */
async function fromPage(path: string): Promise<Response> {
  try {
    const cache = await caches.open(PAGE_CACHE);
    return (await cache.match(path)) ?? Response.error();
  } catch {
    return Response.error();
  }
}

/**
 * The shop's answer; where it does not answer, what it last said, with its age (RFC 9111, 5.1). An answer is kept for later behind the page's back: the page
 * does not wait for that, and a browser that cannot get at what it keeps loses no answer by it.
 */
async function read(request: Request, behind: (work: Promise<void>) => void): Promise<Response> {
  // Opened before the shop is asked: what was asked for one person is not kept once another has had all that was read thrown away.
  const cache = await caches.open(READ_CACHE).catch(() => null);
  let response: Response;
  try {
    response = await fetch(request);
  } catch (error) {
    const kept = await cache?.match(request.url);
    if (kept === undefined) throw error;
    return aged(kept);
  }
  const isKept = response.ok && response.headers.get("content-type")?.includes("json") === true;
  if (isKept && cache !== null) behind(keep(cache, request, response.clone()));
  return response;
}

function aged(kept: Response): Response {
  const headers = new Headers(kept.headers);
  const saidAt = Date.parse(headers.get("date") ?? "");
  headers.set("age", String(Number.isNaN(saidAt) ? 0 : Math.max(0, Math.round((Date.now() - saidAt) / 1000))));
  return new Response(kept.body, { headers, status: kept.status });
}

async function keep(cache: Cache, request: Request, response: Response): Promise<void> {
  const before = await cache.match(request.url);
  // Taken out and put in again, so that the keys lie in the order in which they were last read.
  await cache.delete(request.url);
  try {
    await cache.put(request.url, response);
  } catch {
    // A browser that is full keeps what it had.
    if (before !== undefined) await cache.put(request.url, before).catch(() => undefined);
    return;
  }
  const keys = await cache.keys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - MOST_READ)).map((key) => cache.delete(key)));
}

/** A bowler's data were erased in the shop, or another person is here: what was read before goes. */
async function forgetAfter(request: Request): Promise<Response> {
  const response = await fetch(request);
  if (response.ok) await caches.delete(READ_CACHE);
  return response;
}
