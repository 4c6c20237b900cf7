import { parentPort } from "node:worker_threads";
import { EngineFault, type Problem } from "#engine/fault";
import { bringVectorKernel } from "#tasks/kernel/vectorKernel";
import { runUnit } from "#tasks/runUnit";
import type { ResultOf, Unit } from "#tasks/unit";

/** What the pool asks of a thread. */
export interface Call {
  readonly unit: Unit;
}

/** A result, or what went wrong: the engine's problems, or for a fault of ours its message. */
export type Answer = { readonly result: ResultOf<Unit> } | { readonly problems: readonly Problem[] | null; readonly message: string };

const port = parentPort;
if (port === null) throw new Error("This file is a thread of the compute pool; it does nothing when run by itself.");

bringVectorKernel();
port.on("message", ({ unit }: Call) => port.postMessage(answerTo(unit)));

function answerTo(unit: Unit): Answer {
  try {
    return { result: runUnit(unit) };
  } catch (error) {
    const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { problems: error instanceof EngineFault ? error.problems : null, message };
  }
}
