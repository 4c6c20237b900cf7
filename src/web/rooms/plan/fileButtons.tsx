import { Button, FileTrigger } from "react-aria-components";
import { PLAN_ANSWER, PLAN_FORM } from "#words/en/screens";
import { saveText } from "../../client/saveFile.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import type { JobDraft } from "../../jobFile/jobDraft.ts";
import { tableCsv } from "./tableColumns.ts";
import type { Answered } from "./usePlan.ts";

/** The answer as files: the table in bare figures, the page on paper. */
export function AnswerFiles({ plan }: Pick<Answered, "plan">) {
  return (
    <div className="buttons">
      <Button onPress={() => saveText(tableCsv(plan), "gritwright-finishes.csv", "text/csv")}>{PLAN_ANSWER.saveCsv}</Button>
      <Button onPress={() => print()}>{PLAN_ANSWER.print}</Button>
    </div>
  );
}

/** More than this is not even read: a job file is a few kilobytes. */
const MOST_BYTES = 2_000_000;

interface JobFilesProps {
  readonly job: JobDraft;
  readonly pool: WorkerPool;
  onOpen(job: JobDraft): void;
  /** Null when there is nothing to complain of. */
  onFailure(reason: string | null): void;
}

/** The job as a file, out as JSON and in as YAML or JSON. A file that cannot be read changes nothing. */
export function JobFiles({ job, pool, onOpen, onFailure }: JobFilesProps) {
  const open = async (files: FileList | null): Promise<void> => {
    const file = files?.[0];
    if (file === undefined) return;
    if (file.size > MOST_BYTES) return onFailure(PLAN_FORM.tooLarge);
    const read = await pool.call({ kind: "read", bytes: new Uint8Array(await file.arrayBuffer()) }, null);
    onFailure(read.kind === "job" ? null : `${PLAN_FORM.unreadable} ${read.sentences.join(" ")}`);
    if (read.kind === "job") onOpen(read.job);
  };
  return (
    <>
      <FileTrigger
        acceptedFileTypes={[".yaml", ".yml", ".json"]}
        onSelect={(files) => {
          open(files).catch((error: unknown) => onFailure(error instanceof Error ? error.message : String(error)));
        }}
      >
        <Button>{PLAN_FORM.open}</Button>
      </FileTrigger>
      <Button onPress={() => saveText(`${JSON.stringify(job, null, 2)}\n`, "gritwright-job.json", "application/json")}>
        {PLAN_FORM.save}
      </Button>
    </>
  );
}
