import { deliveryFileSchema, deliveryOf } from "#contract/deliveryFile";
import { checkFile } from "#contract/job/checkJob";
import { fromEngine, JobFault } from "#contract/problem";
import { EngineFault } from "#engine/fault";
import { fieldProblem } from "./planRequest.ts";
import type { DeliveryMeasured } from "./protocol.ts";

/** A delivery from what was seen of some shots, as a delivery file has it: every problem at once, or the figures. */
export function measuredDelivery(file: unknown): DeliveryMeasured {
  try {
    return { kind: "measured", measured: deliveryOf(checkFile(deliveryFileSchema, file)).measured };
  } catch (error) {
    if (error instanceof JobFault) return { kind: "problems", problems: error.problems.map((problem) => fieldProblem(problem)) };
    if (error instanceof EngineFault)
      return { kind: "problems", problems: fromEngine(error.problems).map((problem) => fieldProblem(problem)) };
    throw error;
  }
}
