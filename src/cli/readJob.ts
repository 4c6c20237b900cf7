import { open } from "node:fs/promises";
import type { z } from "zod";
import { checkFile, checkJob } from "#contract/job/checkJob";
import type { CheckedJob } from "#contract/job/jobFile";
import { type JobFault, type ProblemId, wholeFileFault } from "#contract/problem";
import { MOST_BYTES, readJobText, tooLarge } from "#exchange/jobFileText";
import { MOST_MEASURED_BYTES } from "#exchange/measured/measuredFile";
import { MOST_TABLE_BYTES, tableText } from "#exchange/tableText";

/**
 * Reads and checks a job file. No more of it is read than a job file may have.
 *
 * @throws {JobFault} if there is no such file, it cannot be read, or what stands in it cannot be used
 */
export async function readJob(path: string): Promise<CheckedJob> {
  return checkJob(readJobText(await readBytes(path)));
}

/** The same for a file of another schema: bench work, fade. */
export async function readChecked<Schema extends z.ZodType>(path: string, schema: Schema): Promise<z.output<Schema>> {
  return checkFile(schema, readJobText(await readBytes(path)));
}

/** The bytes of a measured file, up to what such a file may have. */
export async function readMeasuredBytes(path: string): Promise<Uint8Array> {
  return readBytes(path, MOST_MEASURED_BYTES);
}

/** A table of another program as text. */
export async function readTableText(path: string): Promise<string> {
  return tableText(await readBytes(path, MOST_TABLE_BYTES));
}

async function readBytes(path: string, most = MOST_BYTES): Promise<Uint8Array> {
  if (path === "-") return readInput(most);
  const file = await open(path, "r").catch((fault: unknown) => {
    throw fileFault(path, fault);
  });
  try {
    const about = await file.stat();
    if (about.isDirectory()) throw wholeFileFault("unreadable", "isFolder", "a file", {}, path);
    if (about.size > most) throw tooLarge(about.size, most);
    return await readUpTo(Math.max(about.size, MOST_BYTES) + 1, (buffer, at) => file.read(buffer, at, buffer.length - at, null));
  } finally {
    await file.close();
  }
}

/** Standard input, of which no more is taken than a file may have. */
async function readInput(most: number): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of process.stdin as AsyncIterable<Uint8Array>) {
    pieces.push(piece);
    length += piece.length;
    if (length > most) throw tooLarge(length, most);
  }
  return Buffer.concat(pieces);
}

/** A pipe or a device does not say how long it is, so the limit is kept while reading too. */
async function readUpTo(most: number, read: (buffer: Uint8Array, at: number) => Promise<{ bytesRead: number }>): Promise<Uint8Array> {
  const buffer = new Uint8Array(most);
  let length = 0;
  while (length < most) {
    const { bytesRead } = await read(buffer, length);
    if (bytesRead === 0) break;
    length += bytesRead;
  }
  return buffer.subarray(0, length);
}

const REASONS: Readonly<Record<string, ProblemId>> = {
  ENOENT: "noFile",
  ENOTDIR: "noFile",
  EISDIR: "isFolder",
  EACCES: "noAccess",
  EPERM: "noAccess",
};

export function fileFault(path: string, fault: unknown): JobFault | unknown {
  const code = fault instanceof Error && "code" in fault ? String(fault.code) : "";
  const reason = REASONS[code];
  return reason === undefined ? fault : wholeFileFault("unreadable", reason, "a job file", {}, path);
}
