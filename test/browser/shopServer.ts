import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";

const MAIN = join(import.meta.dirname, "..", "..", "dist", "server", "main.js");

/** A server of a test's own, that it may kill and start again over the same shop. */
export interface OwnServer {
  readonly address: string;
  kill(): Promise<void>;
}

/** @param port 0 for any; a second start over the same shop takes the first one's */
export async function ownServer(data: string, port: number): Promise<OwnServer> {
  const child: ChildProcess = spawn(process.execPath, [MAIN, "--no-open", "--demonstration", "--data", data, "--port", String(port)]);
  const ended = new Promise<void>((resolve) => child.on("exit", () => resolve()));
  const address = await new Promise<string>((resolve, reject) => {
    let said = "";
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said);
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
