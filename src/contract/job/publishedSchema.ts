import { z } from "zod";
import { JOB_FILE_VERSION, jobFileSchema } from "./jobFile.ts";

/**
 * The job file as JSON Schema (draft 2020-12), for editors and other programs. It says everything but what needs two fields to be seen together
 * (limits the right way round, exactly one form of lane) or the words of a finish; the program checks those too.
 */
export function publishedSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(jobFileSchema, { io: "input", target: "draft-2020-12", reused: "inline" });
  return { $schema, $id: `https://gritwright.invalid/job-file-${JOB_FILE_VERSION}.schema.json`, title: "Gritwright job file", ...rest };
}
