import { closeSync, existsSync, ftruncateSync, mkdirSync, openSync, readSync, statSync, writeSync } from "node:fs";
import { join } from "node:path";
import type { Outcome } from "./hit.ts";

/** Runs of a block are done and written together; a build that is cut loses at most the blocks in work. */
export const BLOCK = 32;
const BYTES = 4;
/** Marks a run as done: an untouched file reads as zeros. */
const DONE = 1 << 30;

/** The outcomes of a design on disk, four bytes a run. */
export interface OutcomeFile {
  readonly path: string;
  /** Outcome of each run, null where it is not done yet. */
  read(): (Outcome | null)[];
  writeBlock(block: number, outcomes: readonly Outcome[]): void;
  close(): void;
}

/** Opens or makes the checkpoint of a design with `count` runs; a shorter one is lengthened and keeps what it has. */
export function outcomeFile(folder: string, name: string, count: number): OutcomeFile {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${name}.outcomes`);
  const file = openSync(path, existsSync(path) ? "r+" : "w+");
  if (statSync(path).size < count * BYTES) ftruncateSync(file, count * BYTES);
  return {
    path,
    read() {
      const words = new Int32Array(count);
      readSync(file, words, 0, count * BYTES, 0);
      return Array.from(words, (word) => ((word & DONE) === 0 ? null : { leave: word & 1023, touched: (word >> 10) & 1023 }));
    },
    writeBlock(block, outcomes) {
      const words = Int32Array.from(outcomes, ({ leave, touched }) => DONE | leave | (touched << 10));
      writeSync(file, words, 0, words.byteLength, block * BLOCK * BYTES);
    },
    close: () => closeSync(file),
  };
}

/** Blocks with a run that is not done. */
export function blocksToDo(outcomes: readonly (Outcome | null)[]): readonly number[] {
  const blocks: number[] = [];
  for (let start = 0; start < outcomes.length; start += BLOCK)
    if (outcomes.slice(start, start + BLOCK).includes(null)) blocks.push(start / BLOCK);
  return blocks;
}
