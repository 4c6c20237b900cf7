import { spawn } from "node:child_process";
import { join } from "node:path";
import { ROOT } from "../tools/setup.mjs";

/** What a command of the program took from start to end. */
export interface Peak {
  readonly command: string;
  readonly megabytes: number;
  readonly seconds: number;
}

const COMMANDS = [
  "--version",
  "plan examples/league-night.yaml",
  "shot examples/one-shot.yaml",
  "carry examples/carry.yaml",
  "delivery examples/delivery.yaml",
  "video examples/video-sightings.yaml",
  "transition examples/transition.yaml",
  "bag examples/bag.yaml",
  "correct examples/correct.yaml",
  "trial examples/trial.yaml",
  "diagnose examples/diagnose.yaml",
  "stages examples/bench-batch.yaml",
  "fade examples/fade.yaml",
  "padwork examples/pad-work.yaml",
  "limits examples/limits.yaml",
] as const;

/**
 * Asks the program itself as it ends. What the system says of the most it held begins with what its parent held, where it does not say it of the program alone.
 */
const SAYS = `import { readFileSync } from "node:fs";
import { isMainThread } from "node:worker_threads";
const own = () => {
  try {
    return Number(/VmHWM:\\s*(\\d+)/.exec(readFileSync("/proc/self/status", "utf8"))[1]);
  } catch {
    return process.resourceUsage().maxRSS;
  }
};
if (isMainThread) process.on("exit", () => process.stderr.write("\\n" + JSON.stringify({ ...process.resourceUsage(), maxRSS: own() })));`;
const TELL = `data:text/javascript,${encodeURIComponent(SAYS)}`;

export async function peaks(): Promise<readonly Peak[]> {
  const found: Peak[] = [];
  for (const command of COMMANDS) found.push(await peakOf(command));
  return found;
}

function peakOf(command: string): Promise<Peak> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", TELL, join(ROOT, "dist", "cli", "main.js"), ...command.split(" ")], { cwd: ROOT });
    let said = "";
    child.stderr.on("data", (chunk) => {
      said += chunk;
    });
    child.stdout.resume();
    child.on("error", reject);
    child.on("close", (code) => {
      if (code !== 0) return reject(new Error(`${command}: ${said}`));
      const used = JSON.parse(said.slice(said.lastIndexOf("\n{"))) as NodeJS.ResourceUsage;
      resolve({ command, megabytes: used.maxRSS / 1000, seconds: (used.userCPUTime + used.systemCPUTime) / 1e6 });
    });
  });
}
