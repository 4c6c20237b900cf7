import { setPriority } from "node:os";
import { RecordsFault, type RecordsFaultKind } from "#contract/records/fault";
import type { Problem } from "#engine/fault";
import { asRecordsFault } from "../database/driverFault.ts";
import { type BackupAnswers, type BackupJob, doBackupJob } from "./backupJob.ts";

/** What comes back from the process. A fault is told by its parts: classes do not come through. */
export type BackupReply =
  | { readonly answer: BackupAnswers[BackupJob["does"]] }
  | { readonly fault: { readonly kind: RecordsFaultKind; readonly about: string; readonly problems: readonly Problem[] } }
  | { readonly broken: string };

/** Whoever serves the shop goes first (`nice`, 0 to 19). */
const NICE = 10;

if (process.send === undefined) throw new Error("This file is the process that makes backups; it does nothing when run by itself.");

// Whoever asked has gone, perhaps by force: nobody waits for it any more.
process.once("disconnect", () => process.exit(1));
process.once("message", async (job: BackupJob) => {
  yieldToOthers();
  process.send?.(await replyTo(job), () => process.disconnect());
});

function yieldToOthers(): void {
  try {
    setPriority(NICE);
  } catch {
    // Not allowed everywhere; it is done all the same, at the price of others.
  }
}

async function replyTo(job: BackupJob): Promise<BackupReply> {
  try {
    return { answer: await doBackupJob(job) };
  } catch (cause) {
    const error = asRecordsFault(cause, job.does === "verify" ? job.path : job.folder.backups);
    if (!(error instanceof RecordsFault)) return { broken: error instanceof Error ? `${error.name}: ${error.message}` : String(error) };
    const { kind, about, problems } = error;
    return { fault: { kind, about, problems } };
  }
}
