import { Worker } from "node:worker_threads";
import { RecordsFault } from "#contract/records/fault";
import type { BackupAnswers, BackupJob } from "./backupJob.ts";
import type { BackupReply } from "./backupWorker.ts";

/** The compiled thread stands beside the compiled caller; run from source, the built one is used. */
const WORKER = new URL(
  import.meta.url.endsWith(".ts") ? "../../../dist/records/backup/backupWorker.js" : "./backupWorker.js",
  import.meta.url,
);

export interface BackupThreads {
  /** Does a job on a thread of its own: copying, squeezing and hashing gigabytes keeps nobody waiting. @throws {RecordsFault} as the job does; `busy` where the records were closed meanwhile */
  run<Does extends BackupJob["does"]>(job: Extract<BackupJob, { does: Does }>): Promise<BackupAnswers[Does]>;
  /** Ends what is under way. A backup that was being made is none; what is left of it goes with the next. */
  close(): Promise<void>;
}

export function backupThreads(): BackupThreads {
  const running = new Set<Worker>();
  return {
    async run(job) {
      const worker = new Worker(WORKER, { execArgv: [], workerData: job });
      running.add(worker);
      try {
        const reply = await replyFrom(worker);
        if ("answer" in reply) return reply.answer as never;
        if ("broken" in reply) throw new Error(reply.broken);
        throw new RecordsFault(reply.fault.kind, reply.fault.about, { problems: reply.fault.problems });
      } finally {
        running.delete(worker);
        await worker.terminate();
      }
    },
    async close() {
      await Promise.all([...running].map((worker) => worker.terminate()));
    },
  };
}

function replyFrom(worker: Worker): Promise<BackupReply> {
  return new Promise((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("error", reject);
    worker.once("exit", () => reject(new RecordsFault("busy", "the backup: the records were closed meanwhile")));
  });
}
