import { correctFileSchema, jobHouseOf, type ResolvedCorrection, resolveCorrection } from "#contract/correctFile";
import { houseLearnedOf } from "#contract/job/house";
import { type CorrectionRun, correct as learn } from "#engine/learning/house/correct";
import { type NextShot, nextShots } from "#engine/learning/house/nextShot";
import { ratingsWanted } from "#engine/planning/candidates";
import type { FinishPlan } from "#engine/planning/plan";
import type { HouseLearned, PlanQuestion } from "#engine/planning/question";
import { decide, rate } from "#engine/planning/steps";
import { programVersion } from "#server/version";
import { correctText } from "./correctText.ts";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import type { ExitCode, World } from "./world.ts";

/** What the finish plan of a ball is without and with what was learned. */
export interface PlanChange {
  readonly ball: string;
  readonly before: FinishPlan;
  readonly after: FinishPlan;
}

/** Plans take some seconds each: of more balls than this the first are told. */
const MOST_PLANS = 3;

/** `gritwright correct FILE`: what the shots seen in a house say of it, and what that does to the plans. */
export async function correct(file: string, options: Options, world: World): Promise<ExitCode> {
  const read = await readChecked(file, correctFileSchema);
  const resolved = resolveCorrection(options.seed === null ? read : { ...read, seed: options.seed });
  const run = learn(resolved.question);
  const next = nextShots(run.emulators, run.places, resolved.question.eye);
  const house = jobHouseOf(run.correction);
  const plans = plansOf(resolved, houseLearnedOf(house));
  world.print(
    options.json ? `${JSON.stringify(documentOf(run, next, plans, resolved), null, 2)}\n` : correctText(run, next, plans, resolved),
  );
  return 0;
}

function documentOf(
  { correction }: CorrectionRun,
  next: readonly NextShot[],
  plans: readonly PlanChange[],
  { names, defaults }: ResolvedCorrection,
) {
  const { draws: _, ...told } = correction;
  return {
    gritwright: 1,
    kind: "correct",
    engineVersion: programVersion(),
    ...told,
    nextShots: next.map((shot) => ({ ...shot, ball: names[shot.situation] })),
    plans: plans.map(({ ball, before, after }) => ({ ball, before: before.pick, after: after.pick })),
    house: jobHouseOf(correction),
    defaults,
  };
}

function plansOf({ question, names, lane, limits }: ResolvedCorrection, house: HouseLearned | null): readonly PlanChange[] {
  const balls = [...new Set(names)].slice(0, MOST_PLANS);
  return balls.flatMap((name) => {
    const situation = question.situations[names.indexOf(name)];
    const asked = (learned: HouseLearned | null): PlanQuestion => ({
      seed: question.seed,
      bowler: question.bowler,
      ball: situation.ball,
      lane,
      line: null,
      limits,
      candidates: null,
      outsideRangeReason: null,
      assumptions: question.assumptions,
      house: learned,
    });
    return [{ ball: name, before: firstPlan(asked(null)), after: firstPlan(asked(house)) }];
  });
}

/** The whole session under the mean of what is assumed; how sure it is takes the plan itself. */
function firstPlan(question: PlanQuestion): FinishPlan {
  return decide(
    question,
    ratingsWanted(question).map((finish) => rate(question, finish)),
    [],
  );
}
