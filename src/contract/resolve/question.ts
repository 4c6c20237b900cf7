import { inMirror, lineInMirror, turnsBack } from "#engine/delivery/backup";
import type { Line } from "#engine/delivery/bowler";
import type { ShotSetup } from "#engine/motion/shot";
import type { PlanQuestion } from "#engine/planning/question";
import type { CheckedJob } from "../job/jobFile.ts";
import { resolveBall } from "./ball.ts";
import { resolveBowler } from "./bowler.ts";
import { DefaultsTaken } from "./defaultsTaken.ts";
import { givenFriction, resolveLane } from "./lane.ts";
import { limitsInMirror, resolveLimits } from "./limits.ts";
import { resolveModel } from "./model.ts";
import { trialInMirror, trialShotsOf } from "./trial.ts";

export const USUAL_SEED = 1;
/** Down the middle: where only mechanics are asked for, no line is better than another. */
const STRAIGHT_LINE: Line = { laydownBoard: 20, launchAngleDeg: 0 };

/** A question for the engine, and the paths of the fields that the job file left to a default. */
export interface Resolved<Question> {
  readonly question: Question;
  readonly defaults: readonly string[];
}

/**
 * The finish plan that a job file asks for. A backup ball is asked about as the other hand's hook: its boards count from the other edge.
 *
 * @throws {JobFault} if the job file is sound by itself but asks for no plan: friction instead of oil, or an oil sheet that contradicts itself
 */
export function resolvePlan(job: CheckedJob): Resolved<PlanQuestion> {
  const defaults = new DefaultsTaken();
  const seed = defaults.or("seed", job.seed, USUAL_SEED);
  const thrown = resolveBowler(job.bowler, defaults);
  const isBackup = turnsBack(thrown);
  const limits = isBackup && job.limits !== undefined ? limitsInMirror(job.limits) : job.limits;
  const trial = trialShotsOf(job.trial?.shots ?? []);
  const line = job.line !== undefined && isBackup ? lineInMirror(job.line) : job.line;
  const question: PlanQuestion = {
    seed,
    bowler: isBackup ? inMirror(thrown) : thrown,
    ball: resolveBall(job.ball, defaults),
    lane: resolveLane(job.lane, defaults),
    line: defaults.or<Line | null>("line", line, null),
    limits: resolveLimits(limits, defaults),
    candidates: defaults.or<PlanQuestion["candidates"]>("candidates", job.candidates, null),
    outsideRangeReason: job.reason ?? null,
    assumptions: setOtherwise(job),
    house: houseOf(job),
    readings: (job.readings ?? []).map((reading) => ({ ...reading })),
    trial: isBackup ? trialInMirror(trial) : trial,
  };
  return { question, defaults: defaults.paths };
}

/** A shot's setup; the line is null where the file names none and the lane is oiled, so that one must be found. */
export interface UnaimedShot extends Omit<ShotSetup, "line"> {
  readonly line: Line | null;
  readonly assumptions: PlanQuestion["assumptions"];
}

/**
 * The single shot that a job file asks for.
 *
 * @param atFt distances at which samples are wanted, ft from the foul line
 * @throws {JobFault} as {@link resolvePlan}
 */
export function resolveShot(job: CheckedJob, atFt: readonly number[]): Resolved<UnaimedShot> {
  const defaults = new DefaultsTaken();
  const friction = givenFriction(job.lane);
  const question: UnaimedShot = {
    seed: defaults.or("seed", job.seed, USUAL_SEED),
    bowler: resolveBowler(job.bowler, defaults),
    ball: resolveBall(job.ball, defaults),
    surface: friction === null ? { kind: "lane", lane: resolveLane(job.lane, defaults) } : { kind: "given", friction },
    line: defaults.or<Line | null>("line", job.line, friction === null ? null : STRAIGHT_LINE),
    model: resolveModel(job.model, defaults),
    atFt,
    assumptions: setOtherwise(job),
  };
  return { question, defaults: defaults.paths };
}

/** Only the assumptions that the file names: an absent key and an undefined one are not the same to the engine. */
export function setOtherwise(job: Pick<CheckedJob, "assumptions">): PlanQuestion["assumptions"] {
  return Object.fromEntries(Object.entries(job.assumptions ?? {}).filter(([, value]) => value !== undefined));
}

/** What was learned of the house; a key that is absent and one that is undefined are not the same to the engine. */
function houseOf({ house }: Pick<CheckedJob, "house">): PlanQuestion["house"] {
  if (house === undefined) return null;
  const { inWorlds, ...rest } = house;
  return inWorlds === undefined ? rest : { ...rest, inWorlds };
}
