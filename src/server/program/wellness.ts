import { type ChildProcess, spawn } from "node:child_process";
import { request } from "node:http";
import { request as secureRequest } from "node:https";
import { setTimeout as sleep } from "node:timers/promises";
import { entryOf, type Program } from "./state.ts";

/** How long a new version may take until it serves well, ms. */
export const WELL_WITHIN_MS = 60_000;
const LOOK_EVERY_MS = 250;
/** How long a server that is asked to stop may take, ms. */
const STOP_MS = 10_000;

/** What a server tells the program that started it, once it listens. Newer versions keep to it, or cannot be brought in by older ones. */
export interface Listening {
  readonly gritwright: "listening";
  readonly address: string;
  readonly port: number;
  readonly isEncrypted: boolean;
}

/** Starts a version as a process of its own that can tell where it listens. */
export function started(program: Program, args: readonly string[], environment: NodeJS.ProcessEnv): ChildProcess {
  return spawn(process.execPath, [entryOf(program), ...args], { env: environment, stdio: ["inherit", "inherit", "inherit", "ipc"] });
}

/** @returns null once it serves well as that version; else why it does not */
export async function wellWithin(child: ChildProcess, version: string, mostMs: number): Promise<string | null> {
  let listening: Listening | null = null;
  let ended: string | null = null;
  child.on("message", (message) => {
    if (isListening(message)) listening = message;
  });
  child.on("error", (error) => {
    ended = `could not be started: ${error.message}`;
  });
  child.on("exit", (code, signal) => {
    ended = `ended by itself with ${code ?? signal}`;
  });
  let last = "said nothing of where it listens";
  for (const until = performance.now() + mostMs; performance.now() < until; await sleep(LOOK_EVERY_MS)) {
    if (ended !== null) return ended;
    if (listening === null) continue;
    const said = await healthOf(listening);
    if (said === version) return null;
    last = said === null ? "does not answer that it is well" : `says that it is ${said}`;
  }
  return `was not well within ${Math.round(mostMs / 1000)} s: ${last}`;
}

function isListening(message: unknown): message is Listening {
  return typeof message === "object" && message !== null && "gritwright" in message && message.gritwright === "listening";
}

/** @returns the version of a server that is well */
export function healthOf({ address, port, isEncrypted }: Omit<Listening, "gritwright">): Promise<string | null> {
  const host = address === "0.0.0.0" || address === "::" ? "127.0.0.1" : address;
  const headers = { host: `localhost:${port}` };
  const options = { host, port, path: "/api/health", headers, timeout: 5000 };
  return new Promise((resolve) => {
    // The certificate is for the names in the shop's network; here it is this very machine that is asked.
    const asked = isEncrypted ? secureRequest({ ...options, rejectUnauthorized: false }) : request(options);
    asked.on("response", (response) => {
      let text = "";
      response.setEncoding("utf8").on("data", (piece: string) => {
        text += piece;
      });
      response.on("end", () => resolve(response.statusCode === 200 ? versionIn(text) : null));
    });
    asked.on("timeout", () => asked.destroy());
    asked.on("error", () => resolve(null));
    asked.end();
  });
}

function versionIn(text: string): string | null {
  try {
    const { state, version } = JSON.parse(text) as { state?: unknown; version?: unknown };
    return state === "well" && typeof version === "string" ? version : null;
  } catch {
    return null;
  }
}

/** Asks it to stop, and ends it where it does not. */
export async function stopped(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise((resolve) => child.once("exit", resolve));
  child.kill("SIGTERM");
  const late = setTimeout(() => child.kill("SIGKILL"), STOP_MS);
  await ended;
  clearTimeout(late);
}
