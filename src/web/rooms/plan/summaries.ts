import { COVER_WORDS, PATTERN_WORDS, PLAN_ANSWER } from "#words/en/screens";
import { type JobDraft, valueAt } from "../../jobFile/jobDraft.ts";

/** The parts of the form in one line each, for when they are folded away and for paper. */
const joined = (...parts: readonly (string | null)[]): string => parts.filter((p) => p !== null && p !== "").join(", ");

function withUnit(job: JobDraft, path: string, unit: string): string | null {
  const value = valueAt(job, path);
  return value === undefined ? null : `${String(value)}${unit}`;
}

function word(value: unknown, words: Readonly<Record<string, string>>): string | null {
  return typeof value === "string" ? (words[value] ?? value) : null;
}

export function bowlerSummary(job: JobDraft): string {
  const inWords = [withUnit(job, "bowler.speed", ""), withUnit(job, "bowler.hook", "")];
  return joined(
    withUnit(job, "bowler.name", ""),
    withUnit(job, "bowler.speedMph", " mph"),
    withUnit(job, "bowler.revRateRpm", " rpm"),
    withUnit(job, "bowler.axisRotationDeg", "°"),
    ...inWords,
  );
}

export function ballSummary(job: JobDraft): string {
  return joined(withUnit(job, "ball.name", ""), word(valueAt(job, "ball.cover"), COVER_WORDS), withUnit(job, "ball.finish", ""));
}

export function laneSummary(job: JobDraft): string {
  return patternName(job);
}

export function lineSummary(job: JobDraft): string {
  const [board, deg] = [valueAt(job, "line.laydownBoard"), valueAt(job, "line.launchAngleDeg")];
  return typeof board === "number" && typeof deg === "number" ? PLAN_ANSWER.line(board, deg) : "";
}

export function patternName(job: JobDraft): string {
  const named = word(valueAt(job, "lane.pattern"), PATTERN_WORDS);
  return named ?? String(valueAt(job, "lane.oilSheet.name") ?? valueAt(job, "lane.filmPoints.name") ?? "");
}
