import type { Problem } from "#engine/fault";

/** Why the records did not do what they were asked. */
export const RECORDS_FAULT_KINDS = [
  "notFound",
  "changedMeanwhile",
  "refused",
  "keyReused",
  "busy",
  "readOnly",
  "full",
  "damaged",
  "unreadable",
  "newerSchema",
  "newerWriter",
  "frozen",
  "notReachable",
  "folderGone",
  "badBackup",
] as const;
export type RecordsFaultKind = (typeof RECORDS_FAULT_KINDS)[number];

interface Details {
  /** Which fields are refused, with value and what is allowed. */
  readonly problems?: readonly Problem[];
  /** The thing as it stands now, where somebody else changed it meanwhile. */
  readonly current?: unknown;
  /** What broke underneath; for the log, not for the screen. */
  readonly cause?: unknown;
}

/**
 * The records refuse, or cannot. Nothing of the write that failed remains.
 *
 * `about` names the thing, file or folder: a kind and an id, or a path; never a person's data.
 */
export class RecordsFault extends Error {
  readonly kind: RecordsFaultKind;
  readonly about: string;
  readonly problems: readonly Problem[];
  readonly current: unknown;

  constructor(kind: RecordsFaultKind, about: string, { problems = [], current = null, cause }: Details = {}) {
    super(`${kind}: ${about}${problems.map(({ path, allowed }) => `; ${path}, allowed: ${allowed}`).join("")}`, { cause });
    this.name = "RecordsFault";
    this.kind = kind;
    this.about = about;
    this.problems = problems;
    this.current = current;
  }
}
