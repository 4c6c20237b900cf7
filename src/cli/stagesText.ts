import type { Interval } from "#engine/planning/plan";
import type { BatchStop } from "#engine/surface/batch";
import type { RecipeVerdict } from "#engine/surface/recipe";
import type { Stage, StagePlan } from "#engine/surface/stages";
import {
  ABRASIVE_NAMES,
  KNOWN_FROM,
  RECIPE_SENTENCES,
  RESTATED,
  STAGE_NAMES,
  STAGE_REASONS,
  STOP_SENTENCES,
  WHAT_ENDS,
} from "#words/en/bench";
import { SIDE_NAMES } from "#words/en/padWork";
import { fixed } from "#words/figures";
import { messageText } from "#words/messageText";
import { Params } from "#words/params";
import { paragraph, textTable } from "./textTable.ts";

const WIDTH = 100;

/** One ball's work, planned and, where a recipe is given, checked. */
export interface PlannedWork {
  readonly name: string;
  readonly wanted: string;
  readonly plan: StagePlan;
  readonly recipe: RecipeVerdict | null;
}

/** The bench work as text: a table a ball, then what the batch shares. */
export function stagesText(works: readonly PlannedWork[], batch: readonly BatchStop[], ownCut: Interval | null): string {
  const sections = [
    ...works.map(workLines),
    ...(batch.length > 0 ? [batchLines(works, batch)] : []),
    ...(ownCut ? [[`${RESTATED.ownCut}: ${fixed(ownCut.value, 2)} (${fixed(ownCut.low, 2)}–${fixed(ownCut.high, 2)}).`]] : []),

    paragraph(RESTATED.ruleBook, "", WIDTH),
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function workLines({ name, wanted, plan, recipe }: PlannedWork): string[] {
  const { now } = plan;
  return [
    `${name}: to ${wanted}`,
    `${RESTATED.now}: ${range(now)}, ${KNOWN_FROM[now.from]}.`,
    ...plan.stops.flatMap(({ id }) => paragraph(STOP_SENTENCES[id], "  ! ", WIDTH)),
    ...(plan.stages.length > 0 ? ["", ...stageTable(plan.stages), "", ...summary(plan), ...cautions(plan.stages)] : []),
    ...(recipe
      ? [
          "",
          `${RESTATED.recipe}:`,
          ...recipe.remarks.flatMap((remark) => paragraph(RECIPE_SENTENCES[remark.id](new Params(remark)), "  · ", WIDTH)),
        ]
      : []),
  ];
}

function range({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }): string {
  return `${fixed(value, 2)} µm effective (${fixed(low, 2)}–${fixed(high, 2)})`;
}

function stageTable(stages: readonly Stage[]): string[] {
  const column = (heading: readonly [string, string], align: "left" | "right", cell: (stage: Stage, i: number) => string) => ({
    heading,
    align,
    cells: stages.map(cell),
  });
  return textTable([
    column(["", ""], "right", (_stage, i) => String(i + 1)),
    column(["stage", ""], "left", ({ kind }) => STAGE_NAMES[kind]),
    column(["with", ""], "left", ({ abrasive, wet }) => (abrasive === null ? "" : `${ABRASIVE_NAMES[abrasive]}, ${wet ? "wet" : "dry"}`)),
    column(["sides", ""], "right", ({ sides }) => (sides > 0 ? String(sides) : "")),
    column(["seconds", "a side"], "right", ({ secondsPerSide }) => (secondsPerSide > 0 ? fixed(secondsPerSide, 0) : "")),
    column(["press", ""], "left", ({ force, sides }) => (sides > 0 ? force : "")),
    column(["Ra after", "µm eff."], "right", ({ expectedRaUm }) =>
      expectedRaUm === null ? "" : `${fixed(expectedRaUm.value, 2)} (${fixed(expectedRaUm.low, 2)}–${fixed(expectedRaUm.high, 2)})`,
    ),
    column(["off", "µm"], "right", ({ removedUm }) => (removedUm > 0 ? fixed(removedUm, 1) : "")),
    column(["why", ""], "left", ({ why }) => STAGE_REASONS[why]),
  ]);
}

function summary(plan: StagePlan): string[] {
  return [
    ...paragraph(
      `${RESTATED.sides}: ${(plan.stages.find(({ sides }) => sides > 0)?.sideIds ?? []).map((id) => SIDE_NAMES[id]).join(", ")}.`,
      "",
      WIDTH,
    ),
    `${RESTATED.after}: ${range(plan.expectedRaUm)}.`,
    `${RESTATED.removed}: ${fixed(plan.removedUm, 1)} µm, ${fixed(1000 * plan.diameterLossIn, 2)} thousandths of an inch of diameter.`,
    `${RESTATED.bench}: about ${fixed(plan.benchSeconds / 60, 0)} min.`,
    ...plan.ends.map(({ what, times }) => `${RESTATED.ends} about ${times} times ${WHAT_ENDS[what]}.`),
  ];
}

function cautions(stages: readonly Stage[]): string[] {
  return stages.flatMap(({ cautions: ids }, i) =>
    ids.flatMap((id) => paragraph(`Stage ${i + 1}. ${messageText({ id: `caution.${id}`, params: {} })}`, "  ! ", WIDTH)),
  );
}

function batchLines(works: readonly PlannedWork[], batch: readonly BatchStop[]): string[] {
  return [
    `${RESTATED.batch}:`,
    ...batch.flatMap(({ kind, abrasive, balls }) =>
      paragraph(
        `${STAGE_NAMES[kind]}${abrasive === null ? "" : ` with ${ABRASIVE_NAMES[abrasive]}`}: ${balls.map(({ ball, secondsPerSide }) => `${works[ball].name}${secondsPerSide > 0 ? ` ${fixed(secondsPerSide, 0)} s` : ""}`).join(", ")}`,
        "  · ",
        WIDTH,
      ),
    ),
  ];
}
