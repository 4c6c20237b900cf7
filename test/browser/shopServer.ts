import { spawn } from "node:child_process";
import { type ChildServer, childServer, SERVER } from "../../tools/childServer.ts";
import { layDownDemonstration } from "../../tools/demonstrationShop.mjs";

/**
 * A server of a test's own, that it may kill and start again over the same shop.
 *
 * @param port 0 for any; a second start over the same shop takes the first one's
 * @param options instead of the demonstration
 */
export async function ownServer(data: string, port: number, options: readonly string[] = ["--demonstration"]): Promise<ChildServer> {
  if (options.includes("--demonstration")) await layDownDemonstration(data);
  return childServer(["--data", data, "--port", String(port), ...options]);
}

/** Sets a password as whoever has the machine does, with the shop's server stopped or not. */
export async function setPassword(data: string, name: string, password: string): Promise<void> {
  const child = spawn(process.execPath, [SERVER, "--own", "--data", data, "--set-password", name], { stdio: ["pipe", "ignore", "pipe"] });
  let complaint = "";
  child.stderr.on("data", (chunk: Buffer) => {
    complaint += chunk.toString();
  });
  child.stdin.end(`${password}\n`);
  const code = await new Promise<number | null>((resolve) => child.on("exit", resolve));
  if (code !== 0) throw new Error(`The password was not set: ${complaint}`);
}
