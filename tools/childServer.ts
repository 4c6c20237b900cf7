import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { ROOT } from "./setup.mjs";

export interface ChildServer {
  readonly address: string;
  readonly process: ChildProcess;
  /** Asks it to stop, and waits until it has. */
  stop(): Promise<void>;
}

/**
 * The built server as a process of its own, on a port that the system chooses.
 *
 * @param args beside `--no-open` and the port
 * @param environment beside this process's own
 */
export async function childServer(args: readonly string[], environment: Readonly<Record<string, string>> = {}): Promise<ChildServer> {
  const main = join(ROOT, "dist", "server", "main.js");
  const child = spawn(process.execPath, [main, "--no-open", "--port", "0", ...args], { env: { ...process.env, ...environment } });
  const exit = new Promise<void>((resolve) => child.on("exit", () => resolve()));
  let said = "";
  const address = await new Promise<string>((resolve, reject) => {
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const found = /https?:\/\/[\w.-]+:\d+/.exec(said);
      if (found !== null) resolve(found[0]);
    };
    child.stdout.on("data", hear);
    child.stderr.on("data", hear);
    void exit.then(() => reject(new Error(`The server ended before it listened: ${said}`)));
  });
  return {
    address,
    process: child,
    async stop() {
      child.kill();
      await exit;
    },
  };
}
