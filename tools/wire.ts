import type { Browser } from "@playwright/test";

/** What went over the wire until a room was quiet: heads and bodies as they were sent. */
export interface Wire {
  readonly kb: number;
  readonly requests: number;
  /** Of those, what was asked of the shop's records. */
  readonly askedKb: number;
  readonly asked: number;
}

/** Opens an address in a browser that has never seen the page. */
export async function wireOf(browser: Browser, address: string): Promise<Wire> {
  const context = await browser.newContext();
  try {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send("Network.enable");
    const asked = new Set<string>();
    let wire: Wire = { kb: 0, requests: 0, askedKb: 0, asked: 0 };
    session.on("Network.requestWillBeSent", ({ requestId, request }) => {
      if (new URL(request.url).pathname.startsWith("/api/")) asked.add(requestId);
    });
    session.on("Network.loadingFinished", ({ requestId, encodedDataLength }) => {
      const kb = encodedDataLength / 1000;
      const isAsked = asked.has(requestId);
      wire = {
        kb: wire.kb + kb,
        requests: wire.requests + 1,
        askedKb: wire.askedKb + (isAsked ? kb : 0),
        asked: wire.asked + (isAsked ? 1 : 0),
      };
    });
    await page.goto(address, { waitUntil: "networkidle" });
    return wire;
  } finally {
    await context.close();
  }
}
