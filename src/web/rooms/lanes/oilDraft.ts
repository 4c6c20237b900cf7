import { laneField } from "#contract/job/lane";
import { PATTERN_IDS } from "#engine/lane/patterns";
import { OIL } from "#words/en/rooms/lanes";
import { figureOrNull, textOrNull, typedOf } from "../../shop/typedValues.ts";

export type OilKind = "pattern" | "oilSheet" | "filmPoints";

/** One row of an oil sheet, as typed. */
export interface PassDraft {
  readonly key: string;
  readonly direction: string;
  readonly fromBoard: string;
  readonly toBoard: string;
  readonly times: string;
  readonly perBoardMicrolitres: string;
  readonly fromFt: string;
  readonly toFt: string;
}

/** A pattern as it stands in the form: every way of writing it down keeps what was typed, while another is looked at. */
export interface OilDraft {
  readonly name: string;
  readonly kind: OilKind;
  readonly named: string;
  readonly lengthFt: string;
  readonly statedMl: string;
  readonly statedRatio: string;
  readonly passes: readonly PassDraft[];
  readonly unit: string;
  /** Measured places, one a line. */
  readonly points: string;
}

const EMPTY_PASS = { direction: "out", fromBoard: "", toBoard: "", times: "1", perBoardMicrolitres: "", fromFt: "", toFt: "" };

export function emptyPass(key: string): PassDraft {
  return { ...EMPTY_PASS, key };
}

export function emptyOil(key: string): OilDraft {
  const length = { lengthFt: "", statedMl: "", statedRatio: "" };
  return { name: "", kind: "pattern", named: PATTERN_IDS[0], ...length, passes: [emptyPass(key)], unit: "um", points: "" };
}

/** A kept pattern as the form shows it. @param key makes a name for each row */
export function draftOf(name: string, kept: unknown, key: () => string): OilDraft {
  const oil = laneField.parse(kept);
  const begun = { ...emptyOil(key()), name };
  if (oil.oilSheet !== undefined) {
    const { lengthFt, passes, stated } = oil.oilSheet;
    return {
      ...begun,
      kind: "oilSheet",
      lengthFt: typedOf(lengthFt),
      statedMl: typedOf(stated?.totalMl),
      statedRatio: typedOf(stated?.ratio),
      passes: passes.map((pass) => ({
        key: key(),
        direction: pass.direction,
        fromBoard: typedOf(pass.fromBoard),
        toBoard: typedOf(pass.toBoard),
        times: typedOf(pass.times),
        perBoardMicrolitres: typedOf(pass.perBoardMicrolitres),
        fromFt: typedOf(pass.fromFt),
        toFt: typedOf(pass.toFt),
      })),
    };
  }
  if (oil.filmPoints !== undefined) {
    const { lengthFt, unit, points } = oil.filmPoints;
    const lines = points.map(({ board, ft, film }) => `${board} ${ft} ${film}`).join("\n");
    return { ...begun, kind: "filmPoints", lengthFt: typedOf(lengthFt), unit, points: lines };
  }
  return { ...begun, named: oil.pattern ?? begun.named };
}

/** The pattern as it is written, whether it fits or not. */
export function oilOf(draft: OilDraft): Record<string, unknown> {
  const length = { lengthFt: figureOrNull(draft.lengthFt) };
  switch (draft.kind) {
    case "pattern":
      return { pattern: draft.named };
    case "oilSheet":
      return { oilSheet: { ...length, passes: draft.passes.map(passOf), ...statedOf(draft) } };
    case "filmPoints":
      return { filmPoints: { ...length, unit: draft.unit, points: pointLines(draft.points).map(pointOf) } };
  }
}

function statedOf({ statedMl, statedRatio }: OilDraft): Record<string, unknown> {
  if (textOrNull(statedMl) === null && textOrNull(statedRatio) === null) return {};
  const totalMl = figureOrNull(statedMl);
  const ratio = figureOrNull(statedRatio);
  return { stated: { ...(totalMl === null ? {} : { totalMl }), ...(ratio === null ? {} : { ratio }) } };
}

function passOf({ key: _, direction, ...figures }: PassDraft): Record<string, unknown> {
  return { direction, ...Object.fromEntries(Object.entries(figures).map(([field, typed]) => [field, figureOrNull(typed)])) };
}

function pointLines(points: string): readonly string[] {
  return points.split("\n").filter((line) => line.trim() !== "");
}

function pointOf(line: string): Record<string, unknown> {
  const [board, ft, film, ...more] = line.trim().split(/[\s;]+/);
  if (more.length > 0) return { board: line };
  return { board: figureOrNull(board), ft: figureOrNull(ft ?? ""), film: figureOrNull(film ?? "") };
}

/** What is wrong, by field of the form: `lengthFt`, `passes.0.toFt`, `points`. Nothing where it fits. */
export function problemsOfOil(draft: OilDraft): Readonly<Record<string, string>> {
  const read = laneField.safeParse(oilOf(draft));
  if (read.success) return {};
  return Object.fromEntries(
    read.error.issues.map(({ path, message }) => {
      const [, ...inside] = path.map(String);
      if (inside[0] === "points") return ["points", inside.length < 2 ? message : `${OIL.line(Number(inside[1]) + 1)}: ${message}`];
      if (inside[0] === "stated") return [inside[1] === "totalMl" ? "statedMl" : "statedRatio", message];
      return [inside.join("."), message];
    }),
  );
}
