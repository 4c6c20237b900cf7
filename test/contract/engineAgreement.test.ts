import { expectTypeOf, it } from "vitest";
import type { JobBall } from "#contract/job/ball";
import type { JobBowler } from "#contract/job/bowler";
import type { CheckedJob } from "#contract/job/jobFile";
import type { JobLane } from "#contract/job/lane";
import type { JobModel } from "#contract/job/model";
import type { Ball } from "#engine/ball/ball";
import type { Bowler, Line, Spread } from "#engine/delivery/bowler";
import type { OilPass } from "#engine/lane/lane";
import type { MotionModel } from "#engine/motion/shot";
import type { Limits } from "#engine/planning/question";
import type { Finish } from "#engine/surface/finish";

/** What is written in a file and what the engine takes, with the differences that are meant taken away: optional there, null or readonly here. */
type Plain<T> = T extends readonly (infer Item)[] & { length: infer Length }
  ? number extends Length
    ? Plain<Item>[]
    : { [Key in keyof T]: Plain<T[Key]> }
  : T extends object
    ? { -readonly [Key in keyof T]-?: Plain<Exclude<T[Key], null | undefined>> }
    : T;
type OneOf<List> = List extends readonly (infer Item)[] | undefined ? Item : never;

/** Checked by the compiler, not by the runner: a key that is added to one side only turns the type-check red. */
it("the job file has the engine's own fields", () => {
  expectTypeOf<Plain<Omit<JobBowler, "speed" | "hook" | "spread">>>().toEqualTypeOf<Plain<Omit<Bowler, "spread" | "isBackup">>>();
  expectTypeOf<Plain<JobBowler["spread"]>>().toEqualTypeOf<Plain<Spread> | undefined>();
  expectTypeOf<Plain<Omit<JobBall, "finish" | "principalRgIn">>>().toEqualTypeOf<
    Plain<Omit<Ball, "finish" | "principalRgIn" | "unknown">>
  >();
  expectTypeOf<NonNullable<JobBall["finish"]>>().toEqualTypeOf<Finish>();
  expectTypeOf<Plain<NonNullable<JobModel["motion"]>>>().toEqualTypeOf<MotionModel["motion"]>();
  expectTypeOf<keyof JobModel>().toEqualTypeOf<keyof MotionModel>();
  expectTypeOf<Plain<NonNullable<CheckedJob["line"]>>>().toEqualTypeOf<Plain<Line>>();
  expectTypeOf<keyof NonNullable<CheckedJob["limits"]>>().toEqualTypeOf<keyof Limits>();
  expectTypeOf<Plain<OneOf<NonNullable<JobLane["oilSheet"]>["passes"]>>>().toEqualTypeOf<Plain<OilPass>>();
});
