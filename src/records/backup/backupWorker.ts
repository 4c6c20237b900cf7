import { parentPort, workerData } from "node:worker_threads";
import { RecordsFault, type RecordsFaultKind } from "#contract/records/fault";
import type { Problem } from "#engine/fault";
import { asRecordsFault } from "../database/driverFault.ts";
import { type BackupAnswers, type BackupJob, doBackupJob } from "./backupJob.ts";

/** What comes back from the thread. A fault is told by its parts: classes do not come through. */
export type BackupReply =
  | { readonly answer: BackupAnswers[BackupJob["does"]] }
  | { readonly fault: { readonly kind: RecordsFaultKind; readonly about: string; readonly problems: readonly Problem[] } }
  | { readonly broken: string };

const port = parentPort;
if (port === null) throw new Error("This file is the thread that makes backups; it does nothing when run by itself.");

const job = workerData as BackupJob;
try {
  port.postMessage({ answer: await doBackupJob(job) } satisfies BackupReply);
} catch (error) {
  port.postMessage(replyOf(asRecordsFault(error, job.does === "verify" ? job.path : job.folder.backups)));
}

function replyOf(error: unknown): BackupReply {
  if (error instanceof RecordsFault) {
    const { kind, about, problems } = error;
    return { fault: { kind, about, problems } };
  }
  return { broken: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
}
