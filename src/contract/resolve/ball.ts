import type { Ball, UnknownOfBall } from "#engine/ball/ball";
import { MIDDLE_COVER } from "#engine/ball/covers";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { JobBall } from "../job/ball.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

/** A ball with every number filled in. Where three radii of gyration are given outright, the usual RG and differentials stand unused. */
export function resolveBall(job: JobBall, defaults: DefaultsTaken): Ball {
  return {
    name: defaults.or("ball.name", job.name, TYPICAL_BALL.name),
    cover: defaults.or("ball.cover", job.cover, MIDDLE_COVER),
    job: defaults.or("ball.job", job.job, TYPICAL_BALL.job),
    massLb: defaults.or("ball.massLb", job.massLb, TYPICAL_BALL.massLb),
    diameterIn: defaults.or("ball.diameterIn", job.diameterIn, TYPICAL_BALL.diameterIn),
    ...(job.principalRgIn === undefined ? resolveCore(job, defaults) : { ...CORE, principalRgIn: job.principalRgIn }),
    pinToPapIn: defaults.or("ball.pinToPapIn", job.pinToPapIn, TYPICAL_BALL.pinToPapIn),
    drillingAngleDeg: defaults.or("ball.drillingAngleDeg", job.drillingAngleDeg, TYPICAL_BALL.drillingAngleDeg),
    finish: defaults.or("ball.finish", job.finish, TYPICAL_BALL.finish),
    raMicroinch: job.raMicroinch ?? null,
    ...unknownOf(job),
  };
}

/** Of what is left out these two are more than a number: the answer reckons with all that they may be, or says what hangs on them. */
function unknownOf({ cover, finish }: JobBall): Pick<Ball, "unknown"> {
  const unknown: UnknownOfBall[] = [
    ...(cover === undefined ? (["cover"] as const) : []),
    ...(finish === undefined ? (["finish"] as const) : []),
  ];
  return unknown.length === 0 ? {} : { unknown };
}

type Core = Pick<Ball, "rgIn" | "differentialIn" | "intermediateDifferentialIn" | "principalRgIn">;

const CORE: Omit<Core, "principalRgIn"> = {
  rgIn: TYPICAL_BALL.rgIn,
  differentialIn: TYPICAL_BALL.differentialIn,
  intermediateDifferentialIn: TYPICAL_BALL.intermediateDifferentialIn,
};

function resolveCore(job: JobBall, defaults: DefaultsTaken): Core {
  const rgIn = defaults.or("ball.rgIn", job.rgIn, CORE.rgIn);
  const differentialIn = defaults.or("ball.differentialIn", job.differentialIn, CORE.differentialIn);
  // A usual ball's intermediate differential may be more than the whole differential of this one.
  const usualIntermediate = Math.min(CORE.intermediateDifferentialIn, differentialIn);
  return {
    rgIn,
    differentialIn,
    intermediateDifferentialIn: defaults.or("ball.intermediateDifferentialIn", job.intermediateDifferentialIn, usualIntermediate),
    principalRgIn: null,
  };
}
