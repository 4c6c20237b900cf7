import { bagFileSchema, resolveBag } from "#contract/bagFile";
import { checkFile } from "#contract/job/checkJob";
import { JobFault } from "#contract/problem";
import { bagChart } from "#drawing/bagChart";
import { PAGE_PAINT } from "#drawing/paint";
import { EngineFault } from "#engine/fault";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import { fieldProblem } from "./planRequest.ts";
import type { BagRequest, TwoLayouts } from "./protocol.ts";

/** Reads a bag as it stands in the form: every problem at once, or the question. @param today day of play where none was typed */
export function bagRequest(file: unknown, today: string): BagRequest {
  try {
    return { kind: "question", ...resolveBag(checkFile(bagFileSchema, file), today) };
  } catch (error) {
    if (error instanceof JobFault || error instanceof EngineFault)
      return { kind: "problems", problems: error.problems.map((problem) => fieldProblem(problem)) };
    throw error;
  }
}

/** The bag and its session, for a wide and for a narrow page. */
export function drawBag(plan: BagPlan): TwoLayouts {
  return {
    lying: bagChart(plan, { paint: PAGE_PAINT, id: "bag-lying" }),
    upright: bagChart(plan, { paint: PAGE_PAINT, id: "bag-upright", layout: "upright" }),
  };
}
