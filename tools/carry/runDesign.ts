import { type ChildProcess, fork } from "node:child_process";
import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { type Description, designOf } from "./design.ts";
import type { Outcome } from "./hit.ts";
import { BLOCK, blocksToDo, outcomeFile } from "./outcomes.ts";
import type { Order, Reply } from "./worker.ts";

const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));

/**
 * Plays every run of a design that is not on disk yet, on all cores, and returns all outcomes in order.
 * Cut at any moment it goes on from where it was; the result does not depend on the number of processes.
 */
export async function runDesign(description: Description, folder: string, processes = availableParallelism()): Promise<readonly Outcome[]> {
  const design = designOf(description);
  const file = outcomeFile(folder, design.name, design.count);
  try {
    const todo = [...blocksToDo(file.read())].reverse();
    const progress = progressLine(design.name, design.count, todo.length);
    await Promise.all(
      Array.from({ length: Math.min(processes, todo.length) }, () =>
        playBlocks(description, todo, (block, outcomes) => {
          file.writeBlock(block, outcomes);
          progress();
        }),
      ),
    );
    return file.read().map((outcome, index) => {
      if (outcome === null) throw new Error(`Run ${index} of ${design.name} was not played.`);
      return outcome;
    });
  } finally {
    file.close();
  }
}

/** One process that takes blocks from the common list until it is empty. */
function playBlocks(description: Description, todo: number[], done: (block: number, outcomes: readonly Outcome[]) => void): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = fork(WORKER);
    let isFinished = false;
    const next = (): void => {
      const block = todo.pop();
      if (block === undefined) {
        isFinished = true;
        child.disconnect();
      } else order(child, { block });
    };
    child.on("message", (reply: Reply) => {
      if ("block" in reply) done(reply.block, reply.outcomes);
      next();
    });
    child.on("error", reject);
    child.on("exit", (code) => (isFinished ? resolve() : reject(new Error(`A process of the build ended early (code ${code}).`))));
    order(child, { design: description });
  });
}

function order(child: ChildProcess, message: Order): void {
  child.send(message);
}

/** Prints how far a build is and how long it will still take, at most every ten seconds. */
function progressLine(name: string, count: number, blocks: number): () => void {
  const began = Date.now();
  let finished = 0;
  let printed = began;
  console.log(`${name}: ${count} runs, ${Math.min(count, blocks * BLOCK)} to play`);
  return () => {
    finished++;
    const now = Date.now();
    if (now - printed < 10_000 && finished < blocks) return;
    printed = now;
    const minutesLeft = (((now - began) / finished) * (blocks - finished)) / 60_000;
    console.log(`${name}: ${((100 * finished) / blocks).toFixed(1)} % of what was left, about ${minutesLeft.toFixed(0)} min to go`);
  };
}
