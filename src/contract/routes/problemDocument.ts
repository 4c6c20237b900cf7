import { z } from "zod";
import { PROBLEM_KINDS, type ProblemKind, TYPE_PREFIX } from "./problemKinds.ts";

const KINDS = Object.keys(PROBLEM_KINDS) as [ProblemKind, ...ProblemKind[]];

/** One thing that is wrong: its place in the request, what stood there, what is allowed, and the sentence. */
export const fieldProblemSchema = z.strictObject({
  path: z.string(),
  value: z.unknown(),
  allowed: z.string(),
  message: z.string(),
});
export type FieldProblem = z.output<typeof fieldProblemSchema>;

/** Problem details (RFC 9457), with our own fields: what is wrong by field, and the thing as it is now where somebody else changed it. */
export const problemDocumentSchema = z.strictObject({
  type: z.templateLiteral([TYPE_PREFIX, z.enum(KINDS)]),
  title: z.string(),
  status: z.int(),
  detail: z.string().optional(),
  problems: z.array(fieldProblemSchema).optional(),
  current: z.unknown().optional(),
  /** When to ask again, s. */
  retrySeconds: z.int().optional(),
});
export type ProblemDocument = z.output<typeof problemDocumentSchema>;
