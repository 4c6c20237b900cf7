import type { Assumed } from "#engine/assumptions";
import type { Target } from "./targets.ts";

interface Prediction {
  readonly target: Target;
  readonly says: string;
  readonly miss: number;
}

export interface CalibrationResult {
  readonly fitted: Readonly<Record<string, { value: number; low: number; high: number }>>;
  readonly start: Partial<Assumed>;
  readonly predictions: readonly Prediction[];
  readonly before: readonly Prediction[];
  readonly tried: number;
  readonly best: number;
  readonly seed: number;
}

/** docs/model/calibration.md: every target with what was wanted, what is predicted and by how much it is missed; the kept-out third apart. */
export function calibrationPage(result: CalibrationResult): string {
  const fittedRows = result.predictions.map((prediction, i) => ({ prediction, before: result.before[i] }));
  return [
    "# Calibration of the friction law",
    "",
    "*Written by `npm run calibrate`. Do not edit.*",
    "",
    "Nobody has published the friction of a given cover with a given finish in a film of given thickness. The law's form is physics (friction.md); its constants",
    "are fitted here to what *is* known: published bands, second-hand where they say so, and what the trade puts on whose ball on which lane (common practice, no source).",
    "Agreement is therefore plausibility, not proof. The constants are marked `calibrated` wherever they are shown.",
    "",
    `Search: the prototype's constants, then an even scatter, then a narrowing random walk; ${result.tried} sets in all, seed ${result.seed}. The loss is the sum over the fitted`,
    "targets of (miss / unit)², plus a weak pull (½ × (distance / width of the range)²) to the start, so that what no target speaks for stays where it was.",
    `Best loss ${result.best.toFixed(2)}. A constant's range is the 5–95 % spread over the sets whose loss is within 1.5 of the best, at least ± 6 %. Chances are those of a strike on the`,
    "lane as found, on the coarse map; a situation's miss is by how many points of chance the best finish outside the trade's interval beats the best inside.",
    "",
    "## Constants",
    "",
    "| constant | start | fitted | range |",
    "|---|---|---|---|",
    ...Object.entries(result.fitted).map(
      ([id, { value, low, high }]) => `| ${id} | ${result.start[id as keyof Assumed] ?? value} | ${value} | ${low} – ${high} |`,
    ),
    "",
    "## Fitted targets",
    "",
    ...table(fittedRows.filter(({ prediction }) => !prediction.target.leftOut)),
    "",
    "## Kept out of the fit, and predicted",
    "",
    ...table(fittedRows.filter(({ prediction }) => prediction.target.leftOut)),
    "",
  ].join("\n");
}

function table(rows: readonly { prediction: Prediction; before: Prediction }[]): string[] {
  return [
    "| target | wanted | start said | predicted | miss / unit | mark and source |",
    "|---|---|---|---|---|---|",
    ...rows.map(
      ({ prediction: { target, says, miss }, before }) =>
        `| ${target.name} | ${target.wanted} | ${before.says} | ${says} | ${(miss / target.unit).toFixed(2)} | ${target.mark}: ${target.source} |`,
    ),
  ];
}
