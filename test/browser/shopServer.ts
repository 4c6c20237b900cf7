import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";

const MAIN = join(import.meta.dirname, "..", "..", "dist", "server", "main.js");

/** A server of a test's own, that it may kill and start again over the same shop. */
export interface OwnServer {
  readonly address: string;
  kill(): Promise<void>;
}

/**
 * @param port 0 for any; a second start over the same shop takes the first one's
 * @param options instead of the demonstration
 */
export async function ownServer(data: string, port: number, options: readonly string[] = ["--demonstration"]): Promise<OwnServer> {
  const child: ChildProcess = spawn(process.execPath, [MAIN, "--no-open", "--data", data, "--port", String(port), ...options]);
  const ended = new Promise<void>((resolve) => child.on("exit", () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = "";
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const found = /https?:\/\/[\w.]+:\d+/.exec(said);
      if (found !== null) resolve(found[0]);
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    void ended.then(() => reject(new Error(`The server ended: ${said}`)));
  });
  return {
    address,
    kill: async () => {
      child.kill("SIGKILL");
      await ended;
    },
  };
}

/** Sets a password as whoever has the machine does, with the shop's server stopped or not. */
export async function setPassword(data: string, name: string, password: string): Promise<void> {
  const child = spawn(process.execPath, [MAIN, "--own", "--data", data, "--set-password", name], { stdio: ["pipe", "ignore", "pipe"] });
  let complaint = "";
  child.stderr.on("data", (chunk: Buffer) => {
    complaint += chunk.toString();
  });
  child.stdin.end(`${password}\n`);
  const code = await new Promise<number | null>((resolve) => child.on("exit", resolve));
  if (code !== 0) throw new Error(`The password was not set: ${complaint}`);
}
