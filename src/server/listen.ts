import { createServer, type Server } from "node:http";
import { getRequestListener } from "@hono/node-server";
import type { Hono } from "hono";

/** Where the server listens when nothing else is asked for and nothing else is there. */
export const USUAL_PORT = 4780;
const TRIES = 20;

export interface Listening {
  readonly address: string;
  /**
   * Takes no more requests, lets those under way end, and cuts off what has not ended in time.
   *
   * @param mostMs how long they may take
   */
  close(mostMs: number): Promise<void>;
}

/**
 * Listens on this machine only. Without a port the usual one or the next that is free is taken; a port that is
 * asked for is taken or refused.
 *
 * @param port 0–65535, or null for any; 0 lets the system choose
 * @throws the system's error (EADDRINUSE, EACCES) when no port could be had
 */
export async function listen(server: Hono, port: number | null): Promise<Listening> {
  const ports = port === null ? [...Array.from({ length: TRIES }, (_, i) => USUAL_PORT + i), 0] : [port];
  for (const [index, tried] of ports.entries()) {
    try {
      const http = createServer(getRequestListener(server.fetch));
      const taken = await listenOn(http, tried);
      return { address: `http://127.0.0.1:${taken}`, close: (mostMs) => closed(http, mostMs) };
    } catch (error) {
      const isTaken = error instanceof Error && "code" in error && error.code === "EADDRINUSE";
      if (!isTaken || index === ports.length - 1) throw error;
    }
  }
  throw new Error("No port was tried.");
}

function listenOn(http: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    http.once("error", reject);
    http.listen(port, "127.0.0.1", () => {
      http.off("error", reject);
      const address = http.address();
      resolve(typeof address === "object" && address !== null ? address.port : port);
    });
  });
}

async function closed(http: Server, mostMs: number): Promise<void> {
  const cutOff = setTimeout(() => http.closeAllConnections(), mostMs);
  await new Promise<void>((resolve) => {
    http.close(() => resolve());
    http.closeIdleConnections();
  });
  clearTimeout(cutOff);
}
