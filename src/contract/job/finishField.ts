import { z } from "zod";
import { EngineFault } from "#engine/fault";
import { FINISH_WRITTEN, type Finish, parseFinish } from "#engine/surface/finish";

const ALLOWED = `a finish: ${FINISH_WRITTEN}`;

/** A finish as it is written in a job file: `2000`, `"2000"` or `"1000 + polish"`. */
export const finishField = z
  .union([z.string(), z.number()], { error: ALLOWED })
  .transform((written, context): Finish => {
    try {
      return parseFinish(written);
    } catch (fault) {
      if (!(fault instanceof EngineFault)) throw fault;
      for (const problem of fault.problems) context.addIssue({ code: "custom", message: problem.allowed, input: written });
      return z.NEVER;
    }
  })
  .describe(`The last abrasive's number, and polish over it or not; ${ALLOWED}`);
