import { describe, expect, it } from "vitest";
import { checkJob } from "#contract/job/checkJob";
import { LEAST_JOB, pathsOf, problemsOf } from "./jobs.ts";

describe("a job file that can be used", () => {
  it("needs no more than a ball and a lane", () => {
    expect(checkJob(LEAST_JOB).ball.finish).toEqual({ number: 2000, polished: false });
    expect(checkJob({ ...LEAST_JOB, ball: {} }).ball).toEqual({});
  });

  it("may write a finish as a whole number, as text, and with polish over it", () => {
    const job = checkJob({ ...LEAST_JOB, candidates: [1000, "2000", "1000 + polish"] });
    expect(job.candidates).toEqual([
      { number: 1000, polished: false },
      { number: 2000, polished: false },
      { number: 1000, polished: true },
    ]);
  });

  // A ball without spin and one spun backwards are odd, but mechanics has an answer for them.
  it.each([
    ["no revs at all", { revRateRpm: 0 }],
    ["rotation to 180°", { axisRotationDeg: 180 }],
    ["rotation the other way", { axisRotationDeg: -90 }],
  ])("may describe %s", (_, bowler) => {
    expect(problemsOf({ ...LEAST_JOB, bowler })).toEqual([]);
  });

  it("may give radii of gyration that no rule book would pass", () => {
    expect(problemsOf({ ...LEAST_JOB, ball: { cover: "solid", finish: 500, principalRgIn: [1, 3.9, 2] } })).toEqual([]);
  });
});

describe("a job file that cannot be used", () => {
  it("is told every problem at once, each with its place and what is allowed", () => {
    const problems = problemsOf({
      gritwright: 1,
      bowler: { speedMph: 0, axisRotationDeg: 200, hand: "up" },
      ball: { cover: "wood", finish: "polish" },
      lane: { pattern: "medium-41", playedShots: -1 },
      colour: "red",
    });
    expect(pathsOf(problems).toSorted()).toEqual(
      ["ball.cover", "ball.finish", "bowler.axisRotationDeg", "bowler.hand", "bowler.speedMph", "colour", "lane.playedShots"].toSorted(),
    );
    for (const { allowed } of problems) expect(allowed).not.toBe("");
  });

  it.each([
    ["an unknown cover", { ball: { cover: "wood", finish: 2000 } }, "ball.cover", "one of polyester, urethane, solid, hybrid, pearl"],
    ["a ball that does not move", { bowler: { speedMph: 0 } }, "bowler.speedMph", "0 < x ≤ 40 mph"],
    ["a rotation past the other side", { bowler: { axisRotationDeg: 200 } }, "bowler.axisRotationDeg", "−180 ≤ x ≤ 180 deg"],
    ["not a number", { bowler: { speedMph: Number.NaN } }, "bowler.speedMph", "0 < x ≤ 40 mph"],
    ["a number as text", { bowler: { speedMph: "17" } }, "bowler.speedMph", "0 < x ≤ 40 mph"],
    [
      "limits the wrong way round",
      { limits: { laydownBoard: [30, 9] } },
      "limits.laydownBoard",
      "[least, most] with 0 ≤ least ≤ most ≤ 40",
    ],
    ["another version", { gritwright: 2 }, "gritwright", "1"],
  ])("names field and limits of %s", (_, change, path, allowed) => {
    expect(problemsOf({ ...LEAST_JOB, ...change })).toMatchObject([{ path, allowed }]);
  });

  it.each(["polish", "2000 polish", "", "12", "2000 + wax", 2000.5])("refuses %j as a finish", (finish) => {
    expect(pathsOf(problemsOf({ ...LEAST_JOB, ball: { cover: "hybrid", finish } }))).toEqual(["ball.finish"]);
  });

  it("suggests the key, the cover and the pattern that were meant", () => {
    const problems = problemsOf({
      gritwright: 1,
      bolwer: {},
      ball: { cover: "hybird", finish: 2000 },
      lane: { pattern: "medium-14" },
    });
    const nearest = Object.fromEntries(problems.map(({ path, reason }) => [path, reason.params.nearest]));
    expect(nearest).toEqual({ bolwer: "bowler", "ball.cover": "hybrid", "lane.pattern": "medium-41" });
  });

  it("says what is missing", () => {
    const problems = problemsOf({ gritwright: 1 });
    expect(problems.map(({ path, reason }) => [path, reason.id]).toSorted()).toEqual([
      ["ball", "missing"],
      ["lane", "missing"],
    ]);
  });

  it("wants one form of lane, neither none nor two", () => {
    expect(problemsOf({ ...LEAST_JOB, lane: {} })).toMatchObject([{ path: "lane", reason: { id: "onlyOneOf" } }]);
    const two = { pattern: "medium-41", friction: { constant: 0.1 } };
    expect(problemsOf({ ...LEAST_JOB, lane: two })).toMatchObject([{ path: "lane", reason: { id: "onlyOneOf" } }]);
  });

  it("refuses a word for what the numbers say already", () => {
    const bowler = { speed: "fast", speedMph: 17, hook: "much", revRateRpm: 400 };
    expect(problemsOf({ ...LEAST_JOB, bowler })).toMatchObject([{ path: "bowler.speed", reason: { id: "wordFillsNothing" } }]);
  });

  it.each([null, 7, "text", [], [1]])("refuses %j in place of a mapping", (data) => {
    expect(problemsOf(data)).toMatchObject([{ path: "" }]);
  });
});
