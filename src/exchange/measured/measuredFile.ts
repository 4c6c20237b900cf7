import { measuredFault } from "#contract/problem";
import type { Profile } from "#engine/surface/roughness/profile";
import { readProfileText, type TextOptions } from "./profileText.ts";
import { readSmd, type Smd } from "./smd.ts";
import { readX3p } from "./x3p.ts";

/** What stands in a measured file: heights along a line, or over an area. */
export type MeasuredFile =
  | {
      readonly kind: "profile";
      readonly profile: Profile;
      /** What the byte sum of an SMD file was taken modulo; null for files without one. */
      readonly checksumModulo: Smd["checksumModulo"] | null;
    }
  | { readonly kind: "areal"; readonly um: Float64Array };

/** The largest file that is read: ten million points as text take some 200 MB. */
export const MOST_MEASURED_BYTES = 400_000_000;

/**
 * Reads a measured file by its ending: `.x3p` (ISO 25178-72), `.smd` (ISO 5436-2), `.csv` and `.txt` (columns).
 *
 * @throws {JobFault} code `invalid` for anything that cannot be used; nothing is read past a limit
 */
export function readMeasured(name: string, bytes: Uint8Array, options: TextOptions): MeasuredFile {
  if (bytes.length > MOST_MEASURED_BYTES) throw measuredFault("tooLarge", bytes.length, `at most ${MOST_MEASURED_BYTES} bytes`);
  const ending = name.slice(name.lastIndexOf(".") + 1).toLowerCase();
  if (ending === "x3p") return readX3p(bytes);
  if (ending === "smd") return { kind: "profile", ...readSmd(bytes) };
  if (ending === "csv" || ending === "txt") return { kind: "profile", profile: readProfileText(bytes, options), checksumModulo: null };
  throw measuredFault("kind", ending, "x3p, smd, csv, txt");
}
