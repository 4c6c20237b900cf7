import { type Program, type ProgramState, writeState } from "./state.ts";
import { started, stopped, WELL_WITHIN_MS, wellWithin } from "./wellness.ts";

export interface Trial {
  readonly folder: string;
  readonly state: ProgramState;
  readonly program: Program;
  readonly args: readonly string[];
  readonly say: (words: string) => void;
  readonly mostMs?: number;
}

/**
 * Serves with a new version as a process of its own, watched from the one before: once it is well it is the current one; where it is not in time, it is
 * stopped and never tried again. Where this process is killed in between, the next start tries once more.
 *
 * @returns the new one's exit code, once it has ended; null where it was not well and the one before is to serve
 */
export async function serveOnTrial({ folder, state, program, args, say, mostMs = WELL_WITHIN_MS }: Trial): Promise<number | null> {
  const { version } = program;
  say(`Version ${version} is tried: it is watched until it serves well, and the one before takes over where it does not.`);
  const child = started(program, args, process.env);
  let isStopping = false;
  // Ctrl+C reaches the child by itself; a second one would not wait.
  process.on("SIGINT", () => {
    isStopping = true;
  });
  process.on("SIGTERM", () => {
    isStopping = true;
    child.kill("SIGTERM");
  });
  const ended = new Promise<number>((resolve) => child.on("exit", (code) => resolve(code ?? 1)));
  const why = await wellWithin(child, version, mostMs);
  if (isStopping) return ended;
  if (why === null) {
    writeState(folder, { ...state, current: program, trial: null, last: { version, isWell: true, why: "" } });
    say(`Version ${version} serves well.`);
    return ended;
  }
  await stopped(child);
  writeState(folder, { ...state, trial: null, last: { version, isWell: false, why } });
  say(`Version ${version} ${why}. The version before goes on; the records are as they were left.`);
  return null;
}
