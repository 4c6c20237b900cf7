/** Who writes, and under which key a retry is known. */
export interface Write {
  /** Id of the person of the shop who does it. */
  readonly by: string;
  readonly once?: OnceKey;
}

/**
 * Marks a write that must happen once however often it is asked for: the first answer is kept in the write's own transaction,
 * and a retry gets that answer instead of writing again.
 */
export interface OnceKey {
  /** What the caller made up for this write, 1 to 128 letters. */
  readonly key: string;
  /** Method and address, so that one key cannot mean two things. */
  readonly route: string;
  /** SHA-256 of what was asked; the same key with another body is refused as `keyReused`. */
  readonly bodyHash: string;
}

/** A change names the version it was made on. Another version is refused as `changedMeanwhile`, with the thing as it stands. */
export interface ChangeOn extends Write {
  readonly expectedVersion: number;
}
