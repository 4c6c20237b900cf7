import { z } from "zod";

/* Bodies that nobody sends who means well, each in any size. What is known of a body comes from its schema. */

type Json = unknown;
/** As text: what is nested deeper than this program would write it can still be sent. */
export type Written = (schema: z.ZodType, size: number) => string;

interface Shape {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly additionalProperties?: Shape | boolean;
  readonly items?: Shape;
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly enum?: readonly Json[];
  readonly const?: Json;
  readonly minimum?: number;
  readonly pattern?: string;
}

const MANY = 3;

const shapes = new WeakMap<z.ZodType, Shape>();

function shapeOf(schema: z.ZodType): Shape {
  const known = shapes.get(schema) ?? (z.toJSONSchema(schema, { io: "input", unrepresentable: "any", reused: "inline" }) as Shape);
  shapes.set(schema, known);
  return known;
}

/** Fills every known place: lists and maps with so many entries, and what is at the end of each way with `leaf`. */
function filled(shape: Shape, size: number, leaf: (shape: Shape) => Json, depth = 0): Json {
  const one = shape.anyOf?.[0] ?? shape.oneOf?.[0];
  if (one !== undefined) return filled(one, size, leaf, depth);
  // Lists within lists are filled thinly, or the body would grow by a power of the size.
  const count = depth === 0 ? size : MANY;
  if (shape.properties !== undefined)
    return Object.fromEntries(Object.entries(shape.properties).map(([key, inner]) => [key, filled(inner, size, leaf, depth)]));
  if (shape.items !== undefined) {
    const { items } = shape;
    return Array.from({ length: count }, () => filled(items, size, leaf, depth + 1));
  }
  if (typeof shape.additionalProperties === "object") {
    const inner = shape.additionalProperties;
    return Object.fromEntries(Array.from({ length: count }, (_, i) => [`k${i}`, filled(inner, size, leaf, depth + 1)]));
  }
  return leaf(shape);
}

function plausible({ enum: words, const: only, type, minimum }: Shape): Json {
  if (words !== undefined) return words[0];
  if (only !== undefined) return only;
  if (type === "number" || type === "integer") return (minimum ?? 0) + 1;
  return type === "boolean" ? true : "plausible";
}

function keys(size: number, word = "key"): string {
  return `{${Array.from({ length: size }, (_, i) => `"${word}${i}":0`).join()}}`;
}

function nested(size: number, open: string, close: string): string {
  return `${open.repeat(size)}0${close.repeat(size)}`;
}

/** Every known place of the body's first level, with the same in each. */
function atEach(schema: z.ZodType, text: string): string {
  return `{${Object.keys(shapeOf(schema).properties ?? {})
    .map((key) => `${JSON.stringify(key)}:${text}`)
    .join()}}`;
}

function list(size: number, text: string): string {
  return `[${Array.from({ length: size }, () => text).join()}]`;
}

export const HOSTILE: Readonly<Record<string, Written>> = {
  "unknown keys": (_, size) => keys(size),
  "unknown keys at each place": (schema, size) => atEach(schema, keys(size)),
  "a long key": (_, size) => `{"${"x".repeat(20 * size)}":0}`,
  "misspelt keys": (schema, size) => keys(size, `${Object.keys(shapeOf(schema).properties ?? {})[0]}x`),
  "long texts": (schema, size) => atEach(schema, `"${"x".repeat(20 * size)}"`),
  "long lists of nothing": (schema, size) => atEach(schema, list(size, "0")),
  "long lists of words": (schema, size) => atEach(schema, list(size, '"unknwon"')),
  "long lists of objects": (schema, size) => atEach(schema, list(size, '{"unknown":1,"alsoUnknown":2}')),
  "nested lists": (schema, size) => atEach(schema, nested(size, "[", "]")),
  "nested objects": (_, size) => nested(size, '{"a":', "}"),
  "much that is known": (schema, size) => JSON.stringify(filled(shapeOf(schema), size, plausible)),
  "much that is known, wrong at its end": (schema, size) => JSON.stringify(filled(shapeOf(schema), size, () => "unknwon")),
  "a list instead": (_, size) => list(size, "{}"),
};
