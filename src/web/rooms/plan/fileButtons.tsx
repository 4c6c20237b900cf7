import { Button, FileTrigger } from "react-aria-components";
import { PLAN_ANSWER, PLAN_FORM } from "#words/en/screens";
import { saveBlob, saveText, svgToPng } from "../../client/saveFile.ts";
import type { WorkerPool } from "../../client/workerPool.ts";
import type { JobDraft } from "./jobDraft.ts";
import { tableCsv } from "./tableColumns.ts";
import { type Choice, wantedOf } from "./usePictures.ts";
import type { Answered } from "./usePlan.ts";

/** The answer as files: the chart, the table, the page on paper. */
export function AnswerFiles({
  answered,
  choice,
  pool,
  onFailure,
}: {
  readonly answered: Answered;
  readonly choice: Choice;
  readonly pool: WorkerPool;
  readonly onFailure: (reason: string) => void;
}) {
  const chart = async (): Promise<string> =>
    (await pool.call({ kind: "pictures", wanted: wantedOf(answered, choice, "file") }, null)).lane.lying;
  const guarded = (work: () => Promise<void>) => (): void => {
    work().catch((error: unknown) => onFailure(error instanceof Error ? error.message : String(error)));
  };
  return (
    <div className="buttons no-print">
      <Button onPress={guarded(async () => saveText(await chart(), "gritwright-lane.svg", "image/svg+xml"))}>{PLAN_ANSWER.saveSvg}</Button>
      <Button onPress={guarded(async () => saveBlob(await svgToPng(await chart(), 2), "gritwright-lane.png"))}>
        {PLAN_ANSWER.savePng}
      </Button>
      <Button onPress={() => saveText(tableCsv(answered.plan), "gritwright-finishes.csv", "text/csv")}>{PLAN_ANSWER.saveCsv}</Button>
      <Button onPress={() => print()}>{PLAN_ANSWER.print}</Button>
    </div>
  );
}

const MOST_BYTES = 1_000_000;

/** The job as a file, out and in. A file that cannot be read changes nothing. */
export function JobFiles({
  job,
  onOpen,
  onFailure,
}: {
  readonly job: JobDraft;
  readonly onOpen: (job: JobDraft) => void;
  readonly onFailure: (reason: string) => void;
}) {
  const open = async (files: FileList | null): Promise<void> => {
    const file = files?.[0];
    if (file === undefined) return;
    if (file.size > MOST_BYTES) onFailure(PLAN_FORM.tooLarge);
    else {
      const read = jobFrom(await file.text());
      if (read === null) onFailure(PLAN_FORM.unreadable);
      else onOpen(read);
    }
  };
  return (
    <>
      <FileTrigger acceptedFileTypes={[".json", "application/json"]} onSelect={(files) => void open(files)}>
        <Button>{PLAN_FORM.open}</Button>
      </FileTrigger>
      <Button onPress={() => saveText(`${JSON.stringify(job, null, 2)}\n`, "gritwright-job.json", "application/json")}>
        {PLAN_FORM.save}
      </Button>
    </>
  );
}

function jobFrom(text: string): JobDraft | null {
  try {
    const data: unknown = JSON.parse(text);
    return typeof data === "object" && data !== null && !Array.isArray(data) ? (data as JobDraft) : null;
  } catch {
    return null;
  }
}
