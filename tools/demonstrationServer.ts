import { spawn } from "node:child_process";
import { join } from "node:path";
import { ROOT } from "./setup.mjs";

/** A server of its own over a new demonstration shop. */
export async function demonstrationServer(data: string): Promise<{ readonly address: string; stop(): void }> {
  const main = join(ROOT, "dist", "server", "main.js");
  const child = spawn(process.execPath, [main, "--no-open", "--demonstration", "--data", data, "--port", "0"]);
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on("data", (chunk: Buffer) => {
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(chunk.toString());
      if (found !== null) resolve(found[0]);
    });
    child.on("exit", () => reject(new Error("The server ended before it listened.")));
  });
  return { address, stop: () => child.kill() };
}
