import type { Ball } from "#engine/ball/ball";
import { inMirror, lineInMirror } from "#engine/delivery/backup";
import type { GivenFriction, Lane, PatternSource } from "#engine/lane/lane";
import type { PlanQuestion } from "#engine/planning/question";
import { finishText } from "#engine/surface/finish";
import { limitsInMirror } from "../resolve/limits.ts";
import type { UnaimedShot } from "../resolve/question.ts";
import { trialInMirror } from "../resolve/trial.ts";
import { JOB_FILE_VERSION, type JobFile } from "./jobFile.ts";

/** A plan's question as the job file that asks it, with nothing left to a default but what nobody knows of the ball. */
export function jobOfPlan(question: PlanQuestion): JobFile {
  const { seed, ball, lane, candidates, outsideRangeReason, assumptions, readings, house } = question;
  const { bowler, line, limits, trial } = asThrown(question);
  return {
    gritwright: JOB_FILE_VERSION,
    seed,
    bowler: { ...bowler, spread: { ...bowler.spread } },
    ball: writtenBall(ball),
    lane: writtenLane(lane),
    ...(line === null ? {} : { line: { ...line } }),
    limits: {
      laydownBoard: [...limits.laydownBoard],
      launchAngleDeg: [...limits.launchAngleDeg],
      breakpointBoard: [...limits.breakpointBoard],
    },
    ...(candidates === null ? {} : { candidates: candidates.map(finishText) }),
    ...(outsideRangeReason === null ? {} : { reason: outsideRangeReason }),
    ...writtenAssumptions(assumptions),
    ...(trial.length === 0 ? {} : { trial: { shots: trial.map((shot) => ({ ...shot, finish: finishText(shot.finish) })) } }),
    ...(readings.length === 0 ? {} : { readings: readings.map((one) => ({ ...one, finish: finishText(one.finish) })) }),
    ...(house === null ? {} : { house: house as JobFile["house"] }),
  };
}

/** A backup ball is asked about as the other hand's hook, and written as it was thrown. */
function asThrown({ bowler, line, limits, trial }: PlanQuestion): Pick<PlanQuestion, "bowler" | "line" | "limits" | "trial"> {
  if (bowler.isBackup === undefined) return { bowler, line, limits, trial };
  return { bowler: inMirror(bowler), line: line && lineInMirror(line), limits: limitsInMirror(limits), trial: trialInMirror(trial) };
}

/** A shot's setup as the job file that asks for it. */
export function jobOfShot(shot: UnaimedShot): JobFile {
  const { motion, slipRegularisationMps, rollingResistance, startFt, gravity, coreOrientation } = shot.model;
  const model = { motion, slipRegularisationMps, rollingResistance, startFt, gravity };
  return {
    gritwright: JOB_FILE_VERSION,
    seed: shot.seed,
    bowler: { ...shot.bowler, spread: { ...shot.bowler.spread } },
    ball: writtenBall(shot.ball),
    lane: shot.surface.kind === "lane" ? writtenLane(shot.surface.lane) : { friction: writtenFriction(shot.surface.friction) },
    ...(shot.line === null ? {} : { line: { ...shot.line } }),
    model: coreOrientation === null ? model : { ...model, coreOrientation: [...coreOrientation] },
    ...writtenAssumptions(shot.assumptions),
  };
}

function writtenBall(ball: Ball): JobFile["ball"] {
  const { rgIn, differentialIn, intermediateDifferentialIn, principalRgIn, cover, finish, raMicroinch, unknown = [], ...rest } = ball;
  const core =
    principalRgIn === null ? { rgIn, differentialIn, intermediateDifferentialIn } : { principalRgIn: [...principalRgIn] as const };
  const known = { ...(unknown.includes("cover") ? {} : { cover }), ...(unknown.includes("finish") ? {} : { finish: finishText(finish) }) };
  return { ...rest, ...known, ...core, ...(raMicroinch === null ? {} : { raMicroinch }) } as JobFile["ball"];
}

function writtenLane({ pattern, playedShots }: Lane): JobFile["lane"] {
  return { ...writtenPattern(pattern), playedShots };
}

function writtenPattern(pattern: PatternSource): JobFile["lane"] {
  switch (pattern.kind) {
    case "named":
      return { pattern: pattern.id as NonNullable<JobFile["lane"]["pattern"]> };
    case "oilSheet": {
      const { name, lengthFt, passes, stated } = pattern.sheet;
      const { totalMl, ratio } = stated;
      return {
        oilSheet: {
          name,
          lengthFt,
          passes: passes.map((pass) => ({ ...pass })),
          stated: { ...(totalMl === null ? {} : { totalMl }), ...(ratio === null ? {} : { ratio }) },
        },
      };
    }
    case "filmPoints": {
      const { name, lengthFt, points } = pattern;
      return { filmPoints: { name, lengthFt, unit: "um", points: points.map(({ board, ft, um }) => ({ board, ft, film: um })) } };
    }
  }
}

function writtenFriction(friction: GivenFriction): NonNullable<JobFile["lane"]["friction"]> {
  if (friction.kind === "constant") return { constant: friction.mu };
  const { oil, dry, changeAtFt, widthFt } = friction;
  return { oil, dry, changeAtFt, widthFt };
}

function writtenAssumptions(assumptions: PlanQuestion["assumptions"]): Pick<JobFile, "assumptions"> {
  return Object.keys(assumptions).length === 0 ? {} : { assumptions: { ...assumptions } };
}
