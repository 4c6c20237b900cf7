import { type Entry, MOMENTS, REFUSED, SURFACE_ACTS, type SurfaceRule } from "#engine/rules/events";
import type { LimitAnswer } from "#engine/rules/limits";
import type { BookId } from "#engine/rules/ruleBooks";
import {
  ACT_WORDS,
  ANSWER_WORDS,
  allowedText,
  BOOK_NAMES,
  ENTRY_SENTENCES,
  figureOf,
  LIMITS,
  limitName,
  MOMENT_WORDS,
  whyNotChecked,
} from "#words/en/limits";
import { paragraph, textColumns, textTable } from "./textTable.ts";

const WIDTH = 110;

/** All that is said of one ball under one book on one day. */
export interface LimitsReport {
  readonly name: string | null;
  readonly book: BookId;
  readonly on: string;
  readonly limits: readonly LimitAnswer[];
  readonly entry: readonly Entry[];
  readonly surface: readonly SurfaceRule[];
}

/** The limits as text: one sentence that says what was and was not checked, every limit with its margin and source, surfaces, lists. */
export function limitsText(report: LimitsReport): string {
  const { limits, entry, name } = report;
  const roughness = limits.some(({ quantity, verdict }) => quantity.endsWith("RaMicroinch") && verdict === "warning");
  const sections = [
    [`${name === null ? "" : `${name}: `}${LIMITS.heading(BOOK_NAMES[report.book], report.on)}`, "", ...verdict(limits)],
    limitTable(limits.filter((one) => one.verdict !== "notChecked")),
    roughness ? paragraph(LIMITS.roughness, "  ! ", WIDTH) : [],
    entry.length === 0 ? [] : [`${LIMITS.entry}:`, ...entry.map((one) => `  ${REFUSED.includes(one) ? "!" : "·"} ${ENTRY_SENTENCES[one]}`)],
    surfaceTable(report),
    paragraph(LIMITS.check, "", WIDTH),
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function verdict(limits: readonly LimitAnswer[]): string[] {
  const of = (wanted: LimitAnswer["verdict"]) => limits.filter((one) => one.verdict === wanted);
  const names = (some: readonly LimitAnswer[]) => some.map(limitName).join(", ");
  const unchecked = of("notChecked").map((one) => `${limitName(one)} (${whyNotChecked(one)})`);
  const left = unchecked.length === 0 ? LIMITS.everything : `${LIMITS.notChecked.toLowerCase()}: ${unchecked.join(", ")}`;
  const outside = of("outside");
  const anything = limits.length > of("notChecked").length;
  const head = outside.length > 0 ? `${LIMITS.outside}: ${names(outside)}` : anything ? LIMITS.within : LIMITS.nothing;
  return [
    ...paragraph(`${head}; ${left}.`, "", WIDTH),
    ...(of("warning").length > 0 ? paragraph(`${LIMITS.warning}: ${names(of("warning"))}.`, "  ! ", WIDTH) : []),
  ];
}

function limitTable(limits: readonly LimitAnswer[]): string[] {
  if (limits.length === 0) return [];
  const { columns } = LIMITS;
  const column = (heading: string, align: "left" | "right", cell: (one: LimitAnswer) => string) => ({
    heading: [heading, ""] as const,
    align,
    cells: limits.map(cell),
  });
  return textTable([
    column(columns.what, "left", limitName),
    column(columns.value, "right", ({ value, quantity }) => (value === null ? "" : figureOf(value, quantity))),
    column(columns.allowed, "left", allowedText),
    column(columns.margin, "right", ({ margin, quantity }) => (margin === null ? "" : figureOf(margin, quantity))),
    column("", "left", (one) => LIMITS.verdicts[one.verdict]),
    column(columns.source, "left", ({ source, mark }) => LIMITS.source(source, mark)),
  ]);
}

function surfaceTable({ surface }: LimitsReport): string[] {
  const said = (moment: (typeof MOMENTS)[number], act: (typeof SURFACE_ACTS)[number]) =>
    surface.filter((rule) => rule.moment === moment && rule.act === act).map(({ answer }) => ANSWER_WORDS[answer])[0];
  return [
    `${LIMITS.surface}:`,
    ...textColumns([
      { align: "left", cells: ["", ...MOMENTS.map((moment) => `  ${MOMENT_WORDS[moment]}`)] },
      ...SURFACE_ACTS.map((act) => ({ align: "left" as const, cells: [ACT_WORDS[act], ...MOMENTS.map((moment) => said(moment, act))] })),
    ]),
    ...[...new Set(surface.filter(({ mark }) => mark !== null).map(({ source, mark }) => LIMITS.source(source, mark ?? "")))].map(
      (line) => `  ${line}`,
    ),
  ];
}
