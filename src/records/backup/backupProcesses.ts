import { type ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { RecordsFault } from "#contract/records/fault";
import type { BackupAnswers, BackupJob } from "./backupJob.ts";
import type { BackupReply } from "./backupProcess.ts";

/** The compiled file stands beside the compiled caller; run from source, the built one is used. */
const PROGRAM = fileURLToPath(
  new URL(import.meta.url.endsWith(".ts") ? "../../../dist/records/backup/backupProcess.js" : "./backupProcess.js", import.meta.url),
);

export interface BackupProcesses {
  /**
   * Does a job in a process of its own that lets all others go first: copying, squeezing and hashing gigabytes keeps nobody waiting, which a thread
   * would where there are few processors.
   *
   * @throws {RecordsFault} as the job does; `busy` where the records were closed meanwhile
   */
  run<Does extends BackupJob["does"]>(job: Extract<BackupJob, { does: Does }>): Promise<BackupAnswers[Does]>;
  /** Ends what is under way. A backup that was being made is none; what is left of it goes with the next. */
  close(): Promise<void>;
}

export function backupProcesses(): BackupProcesses {
  const running = new Map<ChildProcess, Promise<unknown>>();
  let isClosed = false;
  return {
    async run(job) {
      const child = fork(PROGRAM, [], { execArgv: [], stdio: ["ignore", "ignore", "inherit", "ipc"] });
      const ended = new Promise((resolve) => child.once("close", resolve));
      running.set(child, ended);
      const reply = await replyFrom(child, job).finally(() => running.delete(child));
      if (reply === null && isClosed) throw new RecordsFault("busy", "the backup: the records were closed meanwhile");
      if (reply === null) throw new Error("The process that makes backups was ended by force.");
      if ("answer" in reply) return reply.answer as never;
      if ("broken" in reply) throw new Error(reply.broken);
      throw new RecordsFault(reply.fault.kind, reply.fault.about, { problems: reply.fault.problems });
    },
    async close() {
      isClosed = true;
      for (const child of running.keys()) child.kill("SIGKILL");
      await Promise.all(running.values());
    },
  };
}

/** Null where it ended without one. */
function replyFrom(child: ChildProcess, job: BackupJob): Promise<BackupReply | null> {
  return new Promise((resolve, reject) => {
    child.once("message", (reply) => resolve(reply as BackupReply));
    child.once("error", reject);
    child.once("close", () => resolve(null));
    child.send(job);
  });
}
