import { writeFile } from "node:fs/promises";
import { wholeFileFault } from "#contract/problem";

/** @throws {JobFault} code `usage` if the file cannot be written where it was asked for */
export async function writePicture(path: string, svg: string): Promise<void> {
  try {
    await writeFile(path, svg);
  } catch (fault) {
    // Node's message ends in the call and the path; the reason stands before the comma.
    const detail = fault instanceof Error ? fault.message.split(",")[0] : String(fault);
    throw wholeFileFault("usage", "notWritten", "a file in a folder that is there and may be written to", { detail }, path);
  }
}
