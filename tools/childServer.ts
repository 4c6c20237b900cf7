import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { ROOT } from "./setup.mjs";

/** The built server. */
export const SERVER = join(ROOT, "dist", "server", "main.js");

export interface ChildServer {
  readonly address: string;
  readonly process: ChildProcess;
  /** Code and signal it ended with. */
  readonly ended: Promise<readonly [number | null, NodeJS.Signals | null]>;
  /** Asks it to stop, and waits until it has. */
  stop(): Promise<void>;
  /** Ends it as a power cut would, and waits until it is gone. */
  kill(): Promise<void>;
}

/**
 * The built server as a process of its own.
 *
 * @param args beside `--no-open`; without a port the system chooses one
 * @param environment beside this process's own
 * @throws Error with what it said, where it ends before it listens
 */
export async function childServer(args: readonly string[], environment: Readonly<Record<string, string>> = {}): Promise<ChildServer> {
  const child = spawn(process.execPath, [SERVER, "--no-open", "--port", "0", ...args], { env: { ...process.env, ...environment } });
  const ended = new Promise<readonly [number | null, NodeJS.Signals | null]>((resolve) =>
    child.on("exit", (code, signal) => resolve([code, signal])),
  );
  const end = async (signal: NodeJS.Signals): Promise<void> => {
    child.kill(signal);
    await ended;
  };
  return {
    address: await addressOf(child, ended),
    process: child,
    ended,
    stop: () => end("SIGTERM"),
    kill: () => end("SIGKILL"),
  };
}

function addressOf({ stdout, stderr }: ChildProcess, ended: Promise<unknown>): Promise<string> {
  let said = "";
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const found = /https?:\/\/[\w.-]+:\d+/.exec(said);
      if (found !== null) resolve(found[0]);
    };
    stdout?.on("data", hear);
    stderr?.on("data", hear);
    void ended.then(() => reject(new Error(`The server ended before it listened: ${said}`)));
  });
}
