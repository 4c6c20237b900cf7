import { createInterface } from "node:readline/promises";

/** Asks whoever sits at the terminal; anything but a yes is a no. */
export async function askToMove(): Promise<boolean> {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  try {
    return /^y(es)?$/i.test((await lines.question("Move it there now? [y/N] ")).trim());
  } finally {
    lines.close();
  }
}
