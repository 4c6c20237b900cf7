import { z } from "zod";
import { assume } from "#engine/assumptions";
import { ABRASIVE_IDS, ABRASIVES, type AbrasiveId } from "#engine/surface/abrasives";
import { PAD_LIMITS, type PadStage, type SideWork, USUAL_PAD_WORK } from "#engine/surface/padWork/padStage";
import { type PadQuestion, PLAIN_QUESTION } from "#engine/surface/padWork/padWork";
import { SIDE_IDS, SIDE_SETS, type SideId } from "#engine/surface/padWork/sides";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { JOB_FILE_VERSION } from "../job/jobFile.ts";

const seconds = (description: string) => quantity("s", PAD_LIMITS.seconds, description);
const force = oneOf(["light", "medium", "hard"], "How hard the pad is pressed").optional();

const sideField = mapping(
  {
    side: oneOf(SIDE_IDS as [SideId, ...SideId[]], "The side, named as it lies when the grip looks at you and the thumb is below"),
    seconds: seconds("Time that the pad moves over it"),
    force,
    held: mapping(
      { atDeg: quantity("°", PAD_LIMITS.angleDeg, "From the middle of the side"), seconds: seconds("Time that the pad stood there") },
      "The pad held still besides (spinner only)",
    ).optional(),
  },
  "One side's work",
);

const stageField = mapping(
  {
    abrasive: z.enum(ABRASIVE_IDS as [AbrasiveId, ...AbrasiveId[]], { error: `one of ${ABRASIVE_IDS.join(", ")}` }),
    by: oneOf(["spinner", "hand"], "What moves").optional(),
    force,
    padDiameterIn: quantity("in", PAD_LIMITS.padDiameterIn, "Width of the pad where it presses").optional(),
    spinnerRpm: quantity("rpm", PAD_LIMITS.spinnerRpm, "Speed of the spinner").optional(),
    sweepDeg: z
      .tuple([quantity("°", PAD_LIMITS.angleDeg, "From"), quantity("°", PAD_LIMITS.angleDeg, "to")], { error: "two angles, [5, 80]" })
      .refine(([from, to]) => from <= to, { error: "two angles, the smaller first" })
      .describe("Sweep there and back between two angles from the middle of the side")
      .optional(),
    strokeDeg: quantity("°", PAD_LIMITS.strokeDeg, "By hand: length of a stroke along the ball").optional(),
    patchDeg: quantity("°", PAD_LIMITS.patchDeg, "By hand: how far from the middle of the side strokes are made").optional(),
    sides: z.union([z.literal(2), z.literal(4), z.literal(6)], { error: "2, 4 or 6" }).optional(),
    secondsPerSide: seconds("Time a side").optional(),
    each: z
      .array(sideField, { error: "a list of sides" })
      .min(1, { error: "at least one side" })
      .max(24, { error: "at most 24" })
      .optional(),
  },
  "One stage",
).superRefine((stage, context) => {
  const byCount = stage.secondsPerSide !== undefined;
  if (byCount !== (stage.each !== undefined) && (byCount || stage.sides === undefined)) return;
  context.addIssue({
    code: "custom",
    message: "sides with secondsPerSide, or each",
    params: { reason: "onlyOneOf" },
  });
});

/** What `padwork` reads: a ball and the stages done to it, side by side. */
export const padWorkFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    ball: mapping(
      {
        name: text("What the ball is called in this shop").optional(),
        diameterIn: quantity("in", { from: 2, to: 20 }, "Diameter").optional(),
        hardnessD: quantity("Shore D", { from: 40, to: 100 }, "Hardness, if measured").optional(),
      },
      "The ball",
    ).optional(),
    stages: z
      .array(stageField, { error: "a list of stages" })
      .min(1, { error: "at least one stage" })
      .max(12, { error: "at most 12 stages" }),
    cells: count("cells", PAD_LIMITS.cells, "Places on the ball at which work is summed").optional(),
    seed: count("", { from: 0, to: 4_294_967_295 }, "For strokes by hand").optional(),
  },
  "A pad work file",
);

export type PadWorkFile = z.output<typeof padWorkFileSchema>;
type FileStage = PadWorkFile["stages"][number];

/** The question that a file asks, with our usual figures where it is silent. */
export function padQuestionOf(file: PadWorkFile): PadQuestion {
  return {
    ...PLAIN_QUESTION,
    diameterIn: file.ball?.diameterIn ?? PLAIN_QUESTION.diameterIn,
    hardnessD: file.ball?.hardnessD ?? PLAIN_QUESTION.hardnessD,
    cells: file.cells ?? PLAIN_QUESTION.cells,
    seed: file.seed ?? PLAIN_QUESTION.seed,
    stages: file.stages.map(stageOf),
  };
}

function stageOf(stage: FileStage): PadStage {
  const a = assume();
  const shared = {
    grainUm: ABRASIVES[stage.abrasive].grainUm,
    padDiameterIn: stage.padDiameterIn ?? USUAL_PAD_WORK.padDiameterIn,
    sides: sidesOf(stage),
  };
  if (stage.by === "hand")
    return {
      ...shared,
      by: "hand",
      strokeSpeed: a["cut.handSpeed"],
      strokeDeg: stage.strokeDeg ?? USUAL_PAD_WORK.strokeDeg,
      patchDeg: stage.patchDeg ?? USUAL_PAD_WORK.patchDeg,
    };
  return {
    ...shared,
    by: "spinner",
    spinnerRpm: stage.spinnerRpm ?? a["cut.spinnerRpm"],
    sweepDeg: stage.sweepDeg ?? USUAL_PAD_WORK.sweepDeg,
  };
}

function sidesOf(stage: FileStage): SideWork[] {
  const usual = stage.force ?? "medium";
  if (stage.each !== undefined)
    return stage.each.map(({ side, seconds: time, force: own, held }) => ({
      side,
      seconds: time,
      force: own ?? usual,
      held: held ?? null,
    }));
  return SIDE_SETS[stage.sides ?? 6].map((side) => ({ side, seconds: stage.secondsPerSide ?? 0, force: usual, held: null }));
}

/** Fields that the file left out and that were taken as usual, named once each. */
export function takenAsUsual(file: PadWorkFile): string[] {
  const silent = (stage: FileStage): string[] => [
    ...(stage.padDiameterIn === undefined ? ["padDiameterIn"] : []),
    ...(stage.by !== "hand" && stage.spinnerRpm === undefined ? ["spinnerRpm"] : []),
    ...(stage.by !== "hand" && stage.sweepDeg === undefined ? ["sweepDeg"] : []),
    ...(stage.by === "hand" && stage.strokeDeg === undefined ? ["strokeDeg"] : []),
    ...(stage.by === "hand" && stage.patchDeg === undefined ? ["patchDeg"] : []),
    ...(stage.force === undefined && stage.each?.every((side) => side.force !== undefined) !== true ? ["force"] : []),
  ];
  const ball = (["diameterIn", "hardnessD"] as const).filter((key) => file.ball?.[key] === undefined);
  return [...new Set([...ball, ...file.stages.flatMap(silent)])];
}
