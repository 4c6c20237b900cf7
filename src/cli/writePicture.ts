import { writeFile } from "node:fs/promises";
import { wholeFileFault } from "#contract/problem";
import type { World } from "./world.ts";

/**
 * Writes a picture where it was asked for; `-` is standard output, and what else is said then goes beside it.
 *
 * @throws {JobFault} code `usage`  if the file cannot be written where it was asked for
 */
export async function writePicture(path: string, svg: string, { draw }: Pick<World, "draw">): Promise<void> {
  if (path === "-") return draw(svg);
  try {
    await writeFile(path, svg);
  } catch (fault) {
    // Node's message ends in the call and the path; the reason stands before the comma.
    const detail = fault instanceof Error ? fault.message.split(",")[0] : String(fault);
    throw wholeFileFault("usage", "notWritten", "a file in a folder that is there and may be written to", { detail }, path);
  }
}
