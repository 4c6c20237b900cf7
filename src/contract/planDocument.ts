import { z } from "zod";
import { METRICS } from "#engine/planning/metric";
import { finite, note, share } from "./documentParts.ts";
import { jobFileSchema } from "./job/jobFile.ts";

const interval = z.strictObject({ value: share, low: share, high: share });
const line = z.strictObject({ laydownBoard: finite, launchAngleDeg: finite });

const candidate = z.strictObject({
  finish: z.string(),
  effectiveRaUm: finite,
  line: line.nullable(),
  boardAtPins: finite.nullable(),
  entryAngleDeg: finite.nullable(),
  hookStartFt: finite.nullable(),
  rollStartFt: finite.nullable(),
  slipAtPinsMps: finite.nullable(),
  speedAtPinsMph: finite.nullable(),
  chance: interval.nullable(),
  expectedPins: z.strictObject({ value: finite, low: finite, high: finite }).nullable(),
  /** Strikes lost, 0–1, when the middle of the shots is off by one of these. */
  missLoss: z.strictObject({ board: share, halfDegree: share, mph: share }).nullable(),
  pins: z
    .strictObject({
      strike: share,
      pinsDown: finite,
      leaves: z.array(z.strictObject({ leave: z.string(), share })).readonly(),
      other: share,
    })
    .nullable(),
  keepsGames: z.strictObject({ value: finite, low: finite, high: finite }).nullable(),
  onTodaysLine: z
    .strictObject({
      boardAtPins: finite,
      boardChange: finite,
      entryAngleDeg: finite,
      hookStartChangeFt: finite.nullable(),
      chance: interval.nullable(),
      /** From today's line to the finish's own: feet at the foul line, target at the arrows, boards inward. */
      move: z.strictObject({ feetBoards: finite, targetBoards: finite }).nullable(),
    })
    .nullable(),
});

const pick = z.strictObject({
  finish: z.string(),
  plateau: z.array(z.string()).min(1),
  cliff: z.enum(["smoother", "duller"]).nullable(),
  sure: z.enum(["sure", "likely", "unsure"]),
  sureShare: share,
});

/** `gritwright plan FILE --json`: one finish plan. Chances are 0–1; what there is none of is null, never absent, never NaN. */
export const planDocumentSchema = z.strictObject({
  gritwright: z.literal(1),
  kind: z.literal("plan"),
  engineVersion: z.string(),
  seed: z.int(),
  /** The job with everything filled in: itself a job file that gives this plan again. */
  inputs: z.custom<z.input<typeof jobFileSchema>>((value) => jobFileSchema.safeParse(value).success, { error: "a job file" }),
  defaults: z.array(z.string()),
  metric: z.enum(METRICS),
  /** The worlds that it was computed over: digest of the ensemble, and how many of them. */
  ensemble: z.string(),
  worlds: z.int(),
  /** The fresh pattern's own figures, and what its sheet states of them. */
  oil: z.strictObject({
    lengthFt: finite,
    volumeMl: finite,
    meanUm: finite,
    ratio: finite.nullable(),
    stated: z.strictObject({ totalMl: finite.nullable(), ratio: finite.nullable() }),
  }),
  today: z.strictObject({ finish: z.string().nullable(), line: line.nullable() }),
  candidates: z.array(candidate),
  pick: pick.nullable(),
  messages: z.array(note),
  reasons: z.array(note),
  rules: z.array(z.strictObject({ rule: z.string(), agrees: z.boolean(), text: z.string(), why: note.nullable() })),
  assumptions: z.array(
    z.strictObject({
      id: z.string(),
      value: finite,
      low: finite,
      high: finite,
      unit: z.string(),
      mark: z.string(),
      source: z.string(),
      text: z.string(),
    }),
  ),
  cautions: z.array(note),
});

export type PlanDocument = z.output<typeof planDocumentSchema>;
