import { trialFileSchema } from "#contract/job/trial";
import { resolvePlan } from "#contract/resolve/question";
import { trialShotsOf } from "#contract/resolve/trial";
import { finishText } from "#engine/surface/finish";
import { programVersion } from "#server/version";
import { type TrialReport, trialReport } from "#tasks/trialReport";
import { TRIAL } from "#words/en/trial";
import type { Options } from "./options.ts";
import { readChecked, readJob } from "./readJob.ts";
import { type Column, paragraph, textTable } from "./textTable.ts";
import { usageFault } from "./usageFault.ts";
import { withExecutor } from "./withExecutor.ts";
import type { ExitCode, World } from "./world.ts";

const WIDTH = 100;

/** `gritwright trial TRIAL [JOB]`: what was seen; with the job file of ball, bowler, lane and line also what it says of the worlds, and of the pick. */
export async function trial(files: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const [file, jobFile, ...rest] = files;
  if (rest.length > 0) throw usageFault(`trial takes a trial and a job file; "${rest[0]}" is one too many.`, "TRIAL [JOB]", rest[0]);
  const { shots } = await readChecked(file, trialFileSchema);
  const seen = trialShotsOf(shots);
  // Read as the job's own trial: a backup ball's boards are turned round with its line.
  const question = jobFile === undefined ? null : resolvePlan({ ...(await readJob(jobFile)), trial: { shots } }).question;
  const report = await withExecutor(options.workers ?? world.workers, (executor) =>
    trialReport(question?.trial ?? seen, question, executor),
  );
  const document = { gritwright: 1, kind: "trial", engineVersion: programVersion(), ...told(report) };
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : text(report));
  return 0;
}

function told({ finishes, worlds }: TrialReport) {
  return { finishes: finishes.map((one) => ({ ...one, finish: finishText(one.finish) })), worlds };
}

function text({ finishes, worlds }: TrialReport): string {
  const column = (heading: readonly [string, string], cell: (one: TrialReport["finishes"][number]) => string): Column => ({
    heading,
    cells: finishes.map(cell),
    align: "right",
  });
  const table = textTable([
    { heading: TRIAL.columns.finish, cells: finishes.map(({ finish }) => finishText(finish)), align: "left" },
    column(TRIAL.columns.shots, ({ shots }) => String(shots)),
    column(TRIAL.columns.seen, ({ boardAtPins }) => TRIAL.board(boardAtPins)),
    ...(worlds === null
      ? []
      : [
          column(TRIAL.columns.before, ({ before }) => (before === null ? TRIAL.none : TRIAL.range(before))),
          column(TRIAL.columns.after, ({ after }) => (after === null ? TRIAL.none : TRIAL.range(after))),
        ]),
  ]);
  const said = worlds === null ? [TRIAL.wantsJob] : [TRIAL.counts(worlds), TRIAL.picks(worlds.pickBefore, worlds.pickAfter)];
  const few = worlds?.isThin ? [TRIAL.few] : [];
  return `${[TRIAL.title, "", ...table, "", ...[...said, ...few].flatMap((one) => paragraph(one, "", WIDTH))].join("\n")}\n`;
}
