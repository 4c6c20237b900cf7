import { createServer, type Server } from "node:http";
import { createServer as createSecureServer } from "node:https";
import { getRequestListener } from "@hono/node-server";
import { isLoopback } from "./http/address.ts";
import { type Certificate, hostOf } from "./reached.ts";

/** Where the server listens when nothing else is asked for and nothing else is there. */
export const USUAL_PORT = 4780;
const TRIES = 20;
/**
 * How long a quiet connection is kept, ms. Longer than any page waits between two questions: closed in the moment in which the page
 * asks again, it would lose the question.
 */
const KEEP_CONNECTION_MS = 75_000;

type Fetching = { readonly fetch: Parameters<typeof getRequestListener>[0] };

export interface Listening {
  readonly address: string;
  /**
   * Takes no more requests, lets those under way end, and cuts off what has not ended in time.
   *
   * @param mostMs how long they may take
   */
  close(mostMs: number): Promise<void>;
}

/** Oldest protocol that is spoken (RFC 8996 forbids those before). */
const LEAST_TLS = "TLSv1.2";

export interface ListenAt {
  /** 0–65535, or null for any; 0 lets the system choose. */
  readonly port: number | null;
  /** Address of this machine to listen on. */
  readonly address: string;
  /** Name to tell people; null: the address. */
  readonly name: string | null;
  /** null: plain HTTP. */
  readonly certificate: Certificate | null;
}

/**
 * Listens. Without a port the usual one or the next that is free is taken; a port that is asked for is taken or refused.
 *
 * @throws the system's error (EADDRINUSE, EACCES) when no port could be had
 */
export async function listen(server: Fetching, { port, address, name, certificate }: ListenAt): Promise<Listening> {
  const ports = port === null ? [...Array.from({ length: TRIES }, (_, i) => USUAL_PORT + i), 0] : [port];
  for (const [index, tried] of ports.entries()) {
    try {
      const answer = getRequestListener(server.fetch);
      const http = certificate === null ? createServer(answer) : createSecureServer({ ...certificate, minVersion: LEAST_TLS }, answer);
      http.keepAliveTimeout = KEEP_CONNECTION_MS;
      const taken = await listenOn(http, tried, address);
      const host = isLoopback(address) && certificate === null ? hostOf(address) : (name ?? hostOf(address));
      return { address: `${certificate === null ? "http" : "https"}://${host}:${taken}`, close: (mostMs) => closed(http, mostMs) };
    } catch (error) {
      const isTaken = error instanceof Error && "code" in error && error.code === "EADDRINUSE";
      if (!isTaken || index === ports.length - 1) throw error;
    }
  }
  throw new Error("No port was tried.");
}

function listenOn(http: Server, port: number, host: string): Promise<number> {
  return new Promise((resolve, reject) => {
    http.once("error", reject);
    http.listen(port, host, () => {
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
