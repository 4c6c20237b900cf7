import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative } from "node:path";

/*
 * A power cut, made up from what a program wrote and synced: what was synced is on the disk; of what was written to a file since its last sync,
 * each write is there or is not, by lot, or none is. A disk may do either. New names count as lasting once their file has been synced
 * (as ext4 and its like do); a rename keeps what had been synced of the file.
 */

/** The library that writes down what is written; null where it cannot be built here. */
export function buildRecorder(): string | null {
  if (process.platform !== "linux") return null;
  const library = join(mkdtempSync(join(tmpdir(), "gritwright-recorder-")), "powerCut.so");
  const source = join(import.meta.dirname, "powerCut.c");
  const built = spawnSync("cc", ["-shared", "-fPIC", "-O1", "-o", library, source, "-ldl", "-lpthread"], { encoding: "utf8" });
  if (built.error !== undefined) return null;
  if (built.status !== 0) throw new Error(built.stderr);
  return library;
}

interface Operation {
  readonly kind: "write" | "truncate" | "sync" | "unlink" | "rename";
  readonly path: string;
  readonly offset: number;
  readonly data: Buffer;
}

const KINDS: Readonly<Record<string, Operation["kind"]>> = { w: "write", t: "truncate", s: "sync", u: "unlink", r: "rename" };
const HEAD = 25;

/** What was written down, up to the last record that is whole. */
function operationsOf(log: string): Operation[] {
  const bytes = readFileSync(log);
  const operations: Operation[] = [];
  for (let at = 0; at + HEAD <= bytes.length; ) {
    const [offset, pathLength, dataLength] = [1, 9, 17].map((place) => Number(bytes.readBigUInt64LE(at + place)));
    const end = at + HEAD + pathLength + dataLength;
    if (end > bytes.length) break;
    const kind = KINDS[String.fromCharCode(bytes[at])];
    const dataAt = at + HEAD + pathLength;
    operations.push({ kind, offset, path: bytes.toString("utf8", at + HEAD, dataAt), data: bytes.subarray(dataAt, end) });
    at = end;
  }
  return operations;
}

/** A file as the disk has it, and what has been written to it since. */
interface FileState {
  lasting: Buffer | null;
  since: Operation[];
}

/**
 * Lays the folder down as the cut left it.
 *
 * @param survives whether a write that was never synced is on the disk all the same
 */
export function layDown(log: string, folder: string, into: string, survives: () => boolean): void {
  const files = new Map<string, FileState>();
  const stateOf = (path: string) => {
    const state = files.get(path) ?? { lasting: null, since: [] };
    files.set(path, state);
    return state;
  };
  for (const operation of operationsOf(log)) {
    const state = stateOf(operation.path);
    if (operation.kind === "sync") files.set(operation.path, { lasting: applied(state.lasting, state.since), since: [] });
    else if (operation.kind === "unlink") files.delete(operation.path);
    else if (operation.kind === "rename") {
      files.set(operation.data.toString("utf8"), state);
      files.delete(operation.path);
    } else state.since.push(operation);
  }
  for (const [path, { lasting, since }] of files) {
    const bytes = applied(
      lasting,
      since.filter(() => survives()),
    );
    if (bytes === null) continue;
    const place = join(into, relative(folder, path));
    mkdirSync(dirname(place), { recursive: true });
    writeFileSync(place, bytes);
  }
}

function applied(before: Buffer | null, operations: readonly Operation[]): Buffer | null {
  if (operations.length === 0) return before;
  let room = Buffer.from(before ?? Buffer.alloc(0));
  let size = room.length;
  for (const { kind, offset, data } of operations) {
    const end = kind === "truncate" ? offset : offset + data.length;
    if (end > room.length) room = Buffer.concat([room, Buffer.alloc(Math.max(end - room.length, room.length))]);
    if (kind === "truncate") room.fill(0, offset);
    else data.copy(room, offset);
    size = kind === "truncate" ? offset : Math.max(size, end);
  }
  return room.subarray(0, size);
}
