import { z } from "zod";
import { bagFileSchema } from "./bagFile.ts";
import { benchFileSchema } from "./bench/benchFile.ts";
import { limitsFileSchema } from "./bench/limitsFile.ts";
import { padWorkFileSchema } from "./bench/padWorkFile.ts";
import { gaugeFileSchema, readingsFileSchema } from "./bench/readingsFile.ts";
import { carryFileSchema } from "./carryFile.ts";
import { complaintFileSchema } from "./complaintFile.ts";
import { correctFileSchema } from "./correctFile.ts";
import { deliveryFileSchema } from "./deliveryFile.ts";
import { jobFileSchema } from "./job/jobFile.ts";
import { trialFileSchema } from "./job/trial.ts";
import { transitionFileSchema } from "./transitionFile.ts";
import { videoFileSchema } from "./videoFile.ts";
import { videoTapsSchema } from "./videoTaps.ts";

/** Every kind of file that is written by hand, by the name of its published schema. */
const KINDS = {
  "job-file": jobFileSchema,
  "bag-file": bagFileSchema,
  "bench-file": benchFileSchema,
  "carry-file": carryFileSchema,
  "complaint-file": complaintFileSchema,
  "correct-file": correctFileSchema,
  "delivery-file": deliveryFileSchema,
  "gauge-file": gaugeFileSchema,
  "limits-file": limitsFileSchema,
  "pad-work-file": padWorkFileSchema,
  "readings-file": readingsFileSchema,
  "transition-file": transitionFileSchema,
  "trial-file": trialFileSchema,
  "video-file": videoFileSchema,
  "video-taps-file": videoTapsSchema,
} as const;

export type FileKind = keyof typeof KINDS;
export const FILE_KINDS = Object.keys(KINDS) as FileKind[];

/** Where a schema lies, in the folder of the schemas. */
export function schemaFile(kind: FileKind): string {
  return `${kind}.schema.json`;
}

/**
 * A kind of file as JSON Schema (draft 2020-12), for editors and other programs. It says everything but what needs two fields to be seen together
 * (limits the right way round, exactly one form of lane) or the words of a finish; the program checks those too. Its id is its own name: resolved where it
 * lies, in a clone as in the package, it leads to itself and nowhere else.
 */
export function publishedSchema(kind: FileKind): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(KINDS[kind], { io: "input", target: "draft-2020-12", reused: "inline" });
  return { $schema, $id: schemaFile(kind), title: `Gritwright ${kind.replaceAll("-", " ")}`, ...rest };
}
