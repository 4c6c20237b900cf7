import { describe, expect, it } from "vitest";
import { checkJob } from "#contract/job/checkJob";
import type { JobFile } from "#contract/job/jobFile";
import { jobOfPlan } from "#contract/job/writeJob";
import { resolvePlan, resolveShot } from "#contract/resolve/question";
import { inMirror, lineInMirror } from "#engine/delivery/backup";
import { simulateShot } from "#engine/motion/simulate";
import { USUAL_LIMITS } from "#engine/planning/question";
import { decide, rate, wantedOf } from "#engine/planning/steps";
import { LEAST_JOB } from "./jobs.ts";

/* A ball whose axis is turned the other way hooks toward the bowler's own side (common practice): on the lane it is the other hand's hook. */

const planOf = (job: JobFile) => resolvePlan(checkJob(job)).question;
const delivery = { speedMph: 16.5, revRateRpm: 280 };
const BACKUP: JobFile = { ...LEAST_JOB, bowler: { ...delivery, hand: "right", axisRotationDeg: -45, axisTiltDeg: -10 } };
const LEFT: JobFile = { ...LEAST_JOB, bowler: { ...delivery, hand: "left", axisRotationDeg: 45, axisTiltDeg: 10 } };

describe("a backup ball", () => {
  it("gets the plan of the other hand's hook, figure by figure, and says from which edge its boards count", () => {
    const [backup, left] = [planOf(BACKUP), planOf(LEFT)].map((question) => {
      const wanted = wantedOf(question);
      return decide(
        question,
        wanted,
        wanted.finishes.map((finish) => rate(question, finish, { ...wanted, span: "fresh" })),
        [],
      );
    });
    expect(backup.candidates).toEqual(left.candidates);
    expect(backup.metric).toBe("strikeChance");
    expect(backup.messages).toContainEqual({ id: "message.backup", params: { side: "left" } });
    expect(left.messages.map(({ id }) => id)).not.toContain("message.backup");
  });

  it("turns line, limits and a trial's boards round, and leaves the usual limits as any hand has them", () => {
    const question = planOf({
      ...BACKUP,
      line: { laydownBoard: 24, launchAngleDeg: -1.5 },
      limits: { laydownBoard: [10, 30] },
      trial: { shots: [{ finish: "500", boardAtPins: 22, sdBoards: 0.5 }] },
    });
    // By hand: board 24 from the right edge is board 16 from the left; inward for one hand is outward for the other.
    expect(question.line).toEqual({ laydownBoard: 16, launchAngleDeg: 1.5 });
    expect(question.limits.laydownBoard).toEqual([10, 30]);
    expect(planOf({ ...BACKUP, limits: { laydownBoard: [4, 30] } }).limits.laydownBoard).toEqual([10, 36]);
    expect(question.limits.launchAngleDeg).toEqual(USUAL_LIMITS.launchAngleDeg);
    expect(question.trial[0].boardAtPins).toBe(18);
  });

  it("is written again as it was thrown, and read again as it was asked", () => {
    const question = planOf({ ...BACKUP, line: { laydownBoard: 24, launchAngleDeg: -1.5 } });
    const again = jobOfPlan(question);
    expect(again.bowler).toMatchObject({ hand: "right", axisRotationDeg: -45, axisTiltDeg: -10 });
    expect(again.line).toEqual({ laydownBoard: 24, launchAngleDeg: -1.5 });
    expect(planOf(again)).toEqual(question);
  });
});

it.each([0, 12, -12])("thrown by the full model it is the other hand's hook, spin and all, with a tilt of %f°", (axisTiltDeg) => {
  const thrown: JobFile = {
    ...LEAST_JOB,
    bowler: { ...delivery, hand: "right", axisRotationDeg: -45, axisTiltDeg },
    // A ball that is alike all round: how its core is turned when it is let go plays no part.
    ball: { cover: "hybrid", finish: "2000", rgIn: 2.5, differentialIn: 0, intermediateDifferentialIn: 0 },
    lane: { friction: { oil: 0.04, dry: 0.2, changeAtFt: 40, widthFt: 2 } },
    line: { laydownBoard: 24, launchAngleDeg: -1.5 },
    model: { motion: "full" },
  };
  const { question } = resolveShot(checkJob(thrown), [59.5]);
  const line = question.line ?? { laydownBoard: 0, launchAngleDeg: 0 };
  const shot = simulateShot({ ...question, line });
  const other = simulateShot({ ...question, bowler: inMirror(question.bowler), line: lineInMirror(line) });
  // One and the same ball on the lane: its boards from both edges make 40, and its spin, told in the lane's own axes, is the same spin.
  expect((shot.course.boardAtPins ?? 0) + (other.course.boardAtPins ?? 0)).toBeCloseTo(40, 6);
  const spins = [shot, other].map(({ samples: [{ omegaRadps }] }) => omegaRadps);
  spins[0].forEach((along, axis) => {
    expect(spins[1][axis]).toBeCloseTo(along, 6);
  });
});
