import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkJob } from "#contract/job/checkJob";
import type { JobFile } from "#contract/job/jobFile";
import { jobOfPlan, jobOfShot } from "#contract/job/writeJob";
import { resolvePlan, resolveShot } from "#contract/resolve/question";
import { LEAST_JOB, problemsOf } from "./jobs.ts";

const planOf = (job: JobFile) => resolvePlan(checkJob(job));

describe("what a job file leaves out", () => {
  it("is filled in and listed by its path", () => {
    const { question, defaults } = planOf(LEAST_JOB);
    // The matched bowler: 17.5 mph, 320 rpm, 45°, 14° (common practice).
    expect(question.bowler).toMatchObject({ hand: "right", speedMph: 17.5, revRateRpm: 320, axisRotationDeg: 45, axisTiltDeg: 14 });
    expect(defaults).toContain("bowler.speedMph");
    expect(defaults).toContain("ball.massLb");
    expect(defaults).toContain("lane.playedShots");
    expect(defaults).toContain("line");
    expect(defaults).not.toContain("ball.cover");
  });

  it("is not listed where it was given, zero included", () => {
    const { question, defaults } = planOf({
      ...LEAST_JOB,
      seed: 0,
      bowler: { revRateRpm: 0 },
      lane: { pattern: "medium-41", playedShots: 0 },
    });
    expect(question.bowler.revRateRpm).toBe(0);
    expect(defaults).not.toContain("seed");
    expect(defaults).not.toContain("bowler.revRateRpm");
    expect(defaults).not.toContain("lane.playedShots");
  });

  it("may be said in words, which still count as assumed", () => {
    const slow = planOf({ ...LEAST_JOB, bowler: { speed: "slow", hook: "much" } });
    const fast = planOf({ ...LEAST_JOB, bowler: { speed: "fast", hook: "little" } });
    expect(slow.question.bowler.speedMph).toBeLessThan(fast.question.bowler.speedMph);
    expect(slow.question.bowler.revRateRpm).toBeGreaterThan(fast.question.bowler.revRateRpm);
    expect(slow.defaults).toContain("bowler.speedMph");
  });

  it("lets a measured number stand beside a word", () => {
    const { question } = planOf({ ...LEAST_JOB, bowler: { hook: "much", revRateRpm: 505 } });
    expect(question.bowler.revRateRpm).toBe(505);
    expect(question.bowler.axisRotationDeg).toBe(planOf({ ...LEAST_JOB, bowler: { hook: "much" } }).question.bowler.axisRotationDeg);
  });
});

describe("a ball of which nobody knows cover or finish", () => {
  const job: JobFile = { gritwright: 1, ball: { name: "Marl Fox" }, lane: { pattern: "medium-41" } };

  it("can be planned, is listed as assumed, and stays not known when it is written again", () => {
    const { question, defaults } = planOf(job);
    expect(question.ball.unknown).toEqual(["cover", "finish"]);
    expect(defaults).toEqual(expect.arrayContaining(["ball.cover", "ball.finish"]));
    const again = jobOfPlan(question);
    expect(again.ball).not.toHaveProperty("cover");
    expect(again.ball).not.toHaveProperty("finish");
    expect(planOf(again).question).toEqual(question);
  });

  it("is not unknown where one of the two is written", () => {
    expect(planOf({ ...job, ball: { cover: "pearl" } }).question.ball.unknown).toEqual(["finish"]);
    expect(planOf({ ...job, ball: { cover: "pearl", finish: "3000" } }).question.ball).not.toHaveProperty("unknown");
  });
});

describe("an oil sheet", () => {
  // By hand: 11 boards × 2 times × 50 µL = 1.1 mL, and 39 boards × 1 × 100 µL = 3.9 mL.
  const passes = [
    { direction: "out", fromBoard: 15, toBoard: 25, times: 2, perBoardMicrolitres: 50, fromFt: 0, toFt: 20 },
    { direction: "back", fromBoard: 1, toBoard: 39, times: 1, perBoardMicrolitres: 100, fromFt: 35, toFt: 5 },
  ] as const;
  const sheet = (totalMl: number): JobFile => ({
    ...LEAST_JOB,
    lane: { oilSheet: { lengthFt: 40, passes: [...passes], stated: { totalMl } } },
  });

  it.each([4.95, 5, 5.05])("whose stated %d mL agree with its passes is taken", (totalMl) => {
    expect(problemsOf(sheet(totalMl), resolvePlan)).toEqual([]);
  });

  it.each([4.8, 5.2, 50])("whose stated %d mL disagree with its passes is refused, with both figures", (totalMl) => {
    const problems = problemsOf(sheet(totalMl), resolvePlan);
    expect(problems).toMatchObject([{ path: "lane.oilSheet.stated.totalMl", reason: { params: { statedMl: totalMl } } }]);
    expect(problems[0].reason.params.computedMl).toBeCloseTo(5, 9);
  });

  it("cannot be longer than the lane, nor a pass than the pattern", () => {
    const lane = { oilSheet: { lengthFt: 61, passes: [...passes] } };
    expect(problemsOf({ ...LEAST_JOB, lane })).toMatchObject([{ path: "lane.oilSheet.lengthFt", allowed: "0 < x ≤ 60 ft" }]);
    const short = { oilSheet: { lengthFt: 30, passes: [...passes] } };
    expect(problemsOf({ ...LEAST_JOB, lane: short })).toMatchObject([{ path: "lane.oilSheet.passes[1].fromFt" }]);
  });
});

it("film in the trade's units becomes micrometres, 0.09 µm a unit (memory: published volumes fit it)", () => {
  const points = [{ board: 20, ft: 10, film: 50 }];
  const { question } = planOf({ ...LEAST_JOB, lane: { filmPoints: { lengthFt: 40, unit: "units", points } } });
  const { pattern } = question.lane;
  expect(pattern.kind === "filmPoints" ? pattern.points[0].um : null).toBeCloseTo(4.5, 12);
});

it("friction given outright is for shots, not for plans", () => {
  const job: JobFile = { ...LEAST_JOB, lane: { friction: { constant: 0.1 } } };
  expect(problemsOf(job, resolvePlan)).toMatchObject([{ path: "lane.friction", reason: { id: "notForPlan" } }]);
  expect(resolveShot(checkJob(job), [60]).question.surface).toEqual({ kind: "given", friction: { kind: "constant", mu: 0.1 } });
});

describe("a question written back as a job file", () => {
  const finish = fc.constantFrom("500", "1000", "2000", "1000 + polish", "4000 + polish");
  const jobs: fc.Arbitrary<JobFile> = fc.record(
    {
      gritwright: fc.constant(1 as const),
      seed: fc.nat(),
      bowler: fc.record(
        {
          hand: fc.constantFrom("left" as const, "right" as const),
          speedMph: fc.double({ min: 5, max: 30, noNaN: true }),
          hook: fc.constantFrom("little" as const, "much" as const),
        },
        { requiredKeys: [] },
      ),
      ball: fc.record(
        {
          cover: fc.constantFrom("polyester" as const, "urethane" as const, "solid" as const, "pearl" as const),
          finish,
          rgIn: fc.double({ min: 2, max: 3, noNaN: true }),
          raMicroinch: fc.double({ min: 1, max: 60, noNaN: true }),
        },
        { requiredKeys: ["cover", "finish"] },
      ),
      lane: fc.record(
        { pattern: fc.constantFrom("light-38" as const, "heavy-44" as const), playedShots: fc.nat(100) },
        { requiredKeys: ["pattern"] },
      ),
      line: fc.record({ laydownBoard: fc.integer({ min: 5, max: 35 }), launchAngleDeg: fc.double({ min: -1, max: 4, noNaN: true }) }),
      candidates: fc.array(finish, { minLength: 1, maxLength: 4 }),
      reason: fc.constant("a try"),
    },
    { requiredKeys: ["gritwright", "ball", "lane"] },
  );

  it("asks the same again", () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const { question } = planOf(job);
        expect(planOf(jobOfPlan(question)).question).toEqual(question);
        const shot = resolveShot(checkJob(job), [15, 60]).question;
        expect(resolveShot(checkJob(jobOfShot(shot)), [15, 60]).question).toEqual(shot);
      }),
      { seed: 7, numRuns: 100 },
    );
  });
});
