import { z } from "zod";
import { assume } from "#engine/assumptions";
import { COVER_IDS } from "#engine/ball/ball";
import type { Findings } from "#engine/rules/stops";
import { ABRASIVE_IDS, ABRASIVE_KINDS, ABRASIVES, type Abrasive, type AbrasiveId, isPolish } from "#engine/surface/abrasives";
import { type BenchBall, COMPARED } from "#engine/surface/benchBall";
import { effectiveRaOfReadingUm } from "#engine/surface/finish";
import { GRADING_IDS, type GradingId, grade } from "#engine/surface/grading";
import { leftBy } from "#engine/surface/history";
import { ownCut } from "#engine/surface/ownCut";
import { freshRaUm, LEAVES_FROM, LEAVES_TO } from "#engine/surface/pads";
import type { RecipeStage } from "#engine/surface/recipe";
import { type BenchHabits, USUAL_HABITS } from "#engine/surface/stages";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { finishField } from "../job/finishField.ts";
import { JOB_FILE_VERSION } from "../job/jobFile.ts";

const GAMES = { from: 0, to: 2000 };
const yes = (description: string) => z.boolean({ error: "true or false" }).describe(description);

const named = z.enum(ABRASIVE_IDS as [AbrasiveId, ...AbrasiveId[]], { error: `one of ${ABRASIVE_IDS.join(", ")}` });

/** An abrasive of the shop's own: never a bare number, always system and number, or the grain itself. */
const ownAbrasive = mapping(
  {
    kind: oneOf(ABRASIVE_KINDS, "What it is"),
    system: oneOf(GRADING_IDS as [GradingId, ...GradingId[]], "Grading system of its number").optional(),
    number: count("", { from: 60, to: 12000 }, "Its number in that system").optional(),
    grainUm: quantity("µm", { from: 0, to: 300 }, "Median grain, where the maker states it").optional(),
    dryAllowed: yes("May be used dry").optional(),
    usesBeforeWorn: count("balls", { from: 1, to: 1000 }, "Balls before it cuts like the next finer").optional(),
  },
  "An abrasive of the shop's own",
).superRefine((own, context) => {
  const graded = own.system !== undefined && own.number !== undefined ? grade(own.system, own.number) : null;
  if (graded === null && own.grainUm === undefined) {
    context.addIssue({ code: "custom", path: ["number"], message: "a number that its system has, or grainUm", input: own.number });
  } else if (graded !== null && !isPolish(own.kind) && freshRaUm(graded.number) === null) {
    const message = `${LEAVES_FROM} to ${LEAVES_TO}: outside them nobody knows what a number leaves; without it grainUm speaks`;
    context.addIssue({ code: "custom", path: ["number"], message, input: own.number });
  }
});

const abrasiveField = z.union([named, ownAbrasive], { error: `one of ${ABRASIVE_IDS.join(", ")}, or an abrasive of the shop's own` });

function abrasiveOf(asked: z.output<typeof abrasiveField>): Abrasive {
  if (typeof asked === "string") return ABRASIVES[asked];
  const graded = asked.system !== undefined && asked.number !== undefined ? grade(asked.system, asked.number) : null;
  return {
    kind: asked.kind,
    grade: graded,
    grainUm: asked.grainUm ?? graded?.grainUm ?? 0,
    dryAllowed: asked.dryAllowed ?? asked.kind !== "wetPaper",
    usesBeforeWorn: asked.usesBeforeWorn ?? 20,
    mark: graded?.mark ?? "memory",
    source: "the shop's own",
  };
}

const benchBallField = mapping(
  {
    name: text("What the ball is called in this shop").optional(),
    cover: oneOf(COVER_IDS, "The cover; left out where nobody knows it").optional(),
    hardnessD: quantity("Shore D", { from: 40, to: 100 }, "Hardness, if measured").optional(),
    diameterIn: quantity("in", { from: 2, to: 20 }, "Diameter").optional(),
    finish: finishField.optional(),
    history: z
      .array(
        mapping(
          {
            abrasive: abrasiveField,
            by: oneOf(["spinner", "hand"], "What turned the ball").optional(),
            usesBefore: count("balls", { from: 0, to: 1000 }, "Balls that the pad had done before").optional(),
            who: text("Initials").optional(),
            on: z.iso.date({ error: "a date, 2026-05-31" }).optional(),
          },
          "One work",
        ),
        { error: "a list of works" },
      )
      .max(200, { error: "at most 200 works" })
      .describe("What was done to the surface, in order")
      .optional(),
    gamesSince: count("games", GAMES, "Games since that finish was put on").optional(),
    gamesSinceExtraction: count("games", GAMES, "Games since oil was last drawn out").optional(),
    gamesSinceResurfacing: count("games", GAMES, "Games since the last full resurfacing").optional(),
    raMicroinch: quantity("µin", { above: 0, to: 1000 }, "A roughness reading (Ra) of the track").optional(),
    compared: oneOf(COMPARED, "The track against a reference ball of that finish, by sheen and touch").optional(),
    trackWear: oneOf(["none", "light", "deep"], "Wear in the track").optional(),
    scratches: oneOf(["none", "deep"], "Scratches that catch a fingernail").optional(),
    plug: oneOf(["none", "proud", "flush"], "A plug in the cover").optional(),
    oil: oneOf(["clean", "some", "soaked"], "Oil in the cover").optional(),
  },
  "The ball as it lies on the bench",
);

const findingsField = mapping(
  {
    crack: yes("A crack").optional(),
    hollowSound: yes("It sounds hollow").optional(),
    claimOpen: yes("A warranty claim is or may be open").optional(),
    cold: yes("It comes from a cold car").optional(),
    serialPhotographed: yes("The serial number has been photographed").optional(),
    inserts: oneOf(["none", "masked", "bare"], "Finger inserts and slugs").optional(),
  },
  "What was found before work",
);

const habitsField = mapping(
  {
    by: oneOf(["spinner", "hand"], "What turns the ball").optional(),
    sides: z
      .union([z.literal(2), z.literal(4), z.literal(6)], { error: "2, 4 or 6" })
      .describe("Sides worked")
      .optional(),
    dry: yes("Foam-backed pads are used dry").optional(),
    spinnerRpm: quantity("rpm", { above: 0, to: 3000 }, "Speed of the spinner").optional(),
    oilOrder: oneOf(["extractFirst", "openFirst"], "Whether the surface is opened with 500 before oil is drawn out").optional(),
    ownCut: quantity("", { above: 0, to: 10 }, "This technician's cut over the usual one").optional(),
    cutReadings: z
      .array(
        mapping(
          {
            beforeMicroinch: quantity("µin", { above: 0, to: 1000 }, "Ra before the stage"),
            afterMicroinch: quantity("µin", { above: 0, to: 1000 }, "Ra after it"),
            abrasive: abrasiveField,
            by: oneOf(["spinner", "hand"], "What turned the ball").optional(),
          },
          "A surface read before and after one stage",
        ),
        { error: "a list of readings" },
      )
      .max(500, { error: "at most 500 readings" })
      .describe("From which this technician's own cut is learned")
      .optional(),
  },
  "How the shop works",
);

const recipeField = z
  .array(
    mapping(
      {
        abrasive: abrasiveField,
        wet: yes("Used wet"),
        by: oneOf(["spinner", "hand"], "What turns the ball").optional(),
        sides: count("sides", { from: 1, to: 12 }, "Sides worked").optional(),
        secondsPerSide: quantity("s", { above: 0, to: 3600 }, "Time a side"),
        force: oneOf(["light", "medium", "hard"], "How hard the pad is pressed").optional(),
      },
      "One stage",
    ),
    { error: "a list of stages" },
  )
  .min(1, { error: "at least one stage" })
  .max(30, { error: "at most 30 stages" });

const fadeField = mapping(
  {
    gamesPerWeek: quantity("games", { above: 0, to: 200 }, "Games a week").optional(),
    from: z.iso.date({ error: "a date, 2026-05-31" }).describe("The day from which weeks are counted").optional(),
    abrasiveness: quantity("", { from: 0.2, to: 5 }, "How hard the house's lanes are on a surface; 1 is usual").optional(),
    readings: z
      .array(
        mapping(
          { games: count("games", GAMES, "Games on the finish"), raMicroinch: quantity("µin", { above: 0, to: 1000 }, "Ra of the track") },
          "A reading",
        ),
        {
          error: "a list of readings",
        },
      )
      .max(500, { error: "at most 500 readings" })
      .optional(),
  },
  "How the ball is used",
);

/** Without a finish that is wanted it is today's that is put on again. */
const workField = mapping(
  { ball: benchBallField, findings: findingsField.optional(), wanted: finishField.optional(), recipe: recipeField.optional() },
  "One ball and what is wanted of it",
).transform((work, context) => {
  const wanted = work.wanted ?? work.ball.finish;
  if (wanted !== undefined) return { ...work, wanted };
  context.addIssue({ code: "custom", path: ["wanted"], message: "a finish, where today's is not known", input: undefined });
  return z.NEVER;
});

/** A bench file: one ball or a batch, as it is, and what is wanted of it. `stages` and `fade` read it. */
export const benchFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    balls: z.array(workField, { error: "a list of balls" }).min(1, { error: "at least one ball" }).max(40, { error: "at most 40 balls" }),
    bench: habitsField.optional(),
    use: fadeField.optional(),
  },
  "A bench file",
);

export type BenchFile = z.output<typeof benchFileSchema>;
export type BenchFileBall = BenchFile["balls"][number];

const USUAL_DIAMETER_IN = 8.594;

export function benchBallOf({ ball }: BenchFileBall): BenchBall {
  return {
    cover: ball.cover ?? null,
    hardnessD: ball.hardnessD ?? null,
    diameterIn: ball.diameterIn ?? USUAL_DIAMETER_IN,
    finish: ball.finish ?? null,
    history: (ball.history ?? []).map(({ abrasive, by, usesBefore, who, on }) => ({
      abrasive: abrasiveOf(abrasive),
      by: by ?? "spinner",
      usesBefore: usesBefore ?? 0,
      who: who ?? "",
      on: on ?? "",
    })),
    gamesSince: ball.gamesSince ?? 0,
    raMicroinch: ball.raMicroinch ?? null,
    compared: ball.compared ?? null,
    trackWear: ball.trackWear ?? "none",
    plug: ball.plug ?? "none",
    oil: ball.oil ?? "clean",
  };
}

export function findingsOf({ findings }: BenchFileBall): Findings {
  const inserts = findings?.inserts ?? "none";
  return {
    crack: findings?.crack ?? false,
    hollowSound: findings?.hollowSound ?? false,
    claimOpen: findings?.claimOpen ?? false,
    cold: findings?.cold ?? false,
    serialPhotographed: findings?.serialPhotographed ?? true,
    hasInserts: inserts !== "none",
    insertsMasked: inserts === "masked",
  };
}

/** The shop's habits; a technician's own cut is the one stated, else the one that readings before and after a stage tell. */
export function habitsOf({ bench }: BenchFile): BenchHabits {
  return {
    by: bench?.by ?? USUAL_HABITS.by,
    sides: bench?.sides ?? USUAL_HABITS.sides,
    dry: bench?.dry ?? USUAL_HABITS.dry,
    spinnerRpm: bench?.spinnerRpm ?? USUAL_HABITS.spinnerRpm,
    oilOrder: bench?.oilOrder ?? USUAL_HABITS.oilOrder,
    ownCut: bench?.ownCut ?? ownCutOf(bench?.cutReadings ?? []).value,
  };
}

/** What readings tell of a technician's own cut, with its range. */
export function ownCutOf(readings: NonNullable<NonNullable<BenchFile["bench"]>["cutReadings"]>) {
  const a = assume();
  return ownCut(
    readings.map(({ beforeMicroinch, afterMicroinch, abrasive, by }) => {
      const beforeUm = effectiveRaOfReadingUm(beforeMicroinch, a);
      return {
        beforeUm,
        afterUm: effectiveRaOfReadingUm(afterMicroinch, a),
        leavesUm: leftBy({ abrasive: abrasiveOf(abrasive), usesBefore: 0 }, beforeUm, a),
        usualReach: a[by === "hand" ? "work.handReach" : "work.spinnerReach"],
      };
    }),
  );
}

export function recipeOf({ recipe }: BenchFileBall, habits: BenchHabits): readonly RecipeStage[] | null {
  if (recipe === undefined) return null;
  return recipe.map((stage) => ({
    abrasive: abrasiveOf(stage.abrasive),
    wet: stage.wet,
    by: stage.by ?? habits.by,
    sides: stage.sides ?? habits.sides,
    secondsPerSide: stage.secondsPerSide,
    force: stage.force ?? "medium",
    spinnerRpm: habits.spinnerRpm,
  }));
}
