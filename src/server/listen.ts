import { createServer, type Server } from "node:http";
import { createServer as createSecureServer } from "node:https";
import type { Socket } from "node:net";
import { getRequestListener } from "@hono/node-server";
import { isLoopback, networkOf } from "./http/address.ts";
import { type Certificate, hostOf } from "./reached.ts";

/** Where the server listens when nothing else is asked for and nothing else is there. */
export const USUAL_PORT = 4780;
const TRIES = 20;
/**
 * How long a quiet connection is kept, ms. Longer than any page waits between two questions: closed in the moment in which the page
 * asks again, it would lose the question.
 */
const KEEP_CONNECTION_MS = 75_000;

/** How long the head of a request, and the whole of it, may take to come in, ms: a photo over a poor radio link takes half a minute. */
const HEAD_MS = 10_000;
const REQUEST_MS = 60_000;
/** How often connections are looked at that take too long, ms. */
const LOOK_EVERY_MS = 1000;
/** How long an encrypted connection may take to be agreed on, ms. */
const HANDSHAKE_MS = 10_000;
/** Open connections of everybody, and those from one address (of IPv6 the network, so the whole shop may be one). */
const MOST_CONNECTIONS = 1000;
const MOST_OF_ONE_ADDRESS = 500;

const LIMITS = { headersTimeout: HEAD_MS, requestTimeout: REQUEST_MS, connectionsCheckingInterval: LOOK_EVERY_MS };

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
      const http =
        certificate === null
          ? createServer(LIMITS, answer)
          : createSecureServer({ ...certificate, ...LIMITS, minVersion: LEAST_TLS, handshakeTimeout: HANDSHAKE_MS }, answer);
      http.keepAliveTimeout = KEEP_CONNECTION_MS;
      limitConnections(http);
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

/**
 * Whoever opens more than a shop needs is not answered; the others keep their room. Where there is none left, from however many addresses it was taken, the
 * connection gives way that has waited longest without ever having asked anything: a browser asks at once.
 */
function limitConnections(http: Server): void {
  const open = new Map<string, number>();
  /** Those that have asked nothing yet, in the order in which they came. Encrypted, what asks is another object than what came. */
  const silent = new Map<string, Socket>();
  let all = 0;
  const nameOf = ({ remoteAddress, remotePort }: Socket) => `${remoteAddress} ${remotePort}`;
  http.on("request", ({ socket }) => silent.delete(nameOf(socket)));
  http.on("connection", (socket) => {
    const from = networkOf(socket.remoteAddress ?? "");
    const name = nameOf(socket);
    const count = (open.get(from) ?? 0) + 1;
    const [oldest] = all < MOST_CONNECTIONS ? [] : silent;
    const isRoom = all < MOST_CONNECTIONS || oldest !== undefined;
    if (count > MOST_OF_ONE_ADDRESS || !isRoom) {
      socket.destroy();
      return;
    }
    if (oldest !== undefined) {
      silent.delete(oldest[0]);
      oldest[1].destroy();
    }
    open.set(from, count);
    all += 1;
    silent.set(name, socket);
    socket.once("close", () => {
      all -= 1;
      silent.delete(name);
      const left = (open.get(from) ?? 1) - 1;
      if (left > 0) open.set(from, left);
      else open.delete(from);
    });
  });
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
