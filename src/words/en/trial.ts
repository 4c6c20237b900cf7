import { fixed } from "../figures.ts";

/** How many worlds count before and after a trial, and whether further nights of them were asked. */
interface Counts {
  readonly effectiveBefore: number;
  readonly effectiveAfter: number;
  readonly furtherNights: boolean;
}

/** Words of the trial's report. */
export const TRIAL = {
  title: "The trial: one ball, one line",
  columns: {
    finish: ["finish", ""],
    shots: ["shots", ""],
    seen: ["arrived", "board"],
    before: ["worlds", "before"],
    after: ["worlds", "after"],
  },
  none: "–",
  board: (board: number) => fixed(board, 1),
  range: ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) =>
    `${fixed(value, 1)} (${fixed(low, 1)}–${fixed(high, 1)})`,
  counts: ({ effectiveBefore, effectiveAfter, furtherNights }: Counts) =>
    furtherNights
      ? `Before, about ${fixed(effectiveBefore, 0)} worlds count. Few of them say what was seen, so each was asked on further nights too; of all of those about ${fixed(effectiveAfter, 0)} count.`
      : `Weighed by what was seen, the worlds count as ${fixed(effectiveAfter, 0)} instead of ${fixed(effectiveBefore, 0)}.`,
  picks: (before: string | null, after: string | null) =>
    before === after
      ? before === null
        ? "No finish is picked, before or after."
        : `The pick stays ${before}.`
      : `The pick was ${before ?? "none"}; it is now ${after ?? "none"}.`,
  few: "Few worlds say what was seen: take the answer as rough, and look whether ball, line and lane are the ones that were bowled.",
  wantsJob: "With the job file of ball, bowler, lane and line this also says what it means for the plan: gritwright trial TRIAL JOB.",
} as const;
