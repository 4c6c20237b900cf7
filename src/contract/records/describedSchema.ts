import type { z } from "zod";
import { mapping, oneOf, quantity, text } from "../job/fields.ts";
import type { Described, Field, Group } from "./described.ts";
import { day, finishText, longText, maybe } from "./fields.ts";

type Maybe<Schema extends z.ZodType> = z.ZodDefault<z.ZodNullable<Schema>>;
type Needed<F, Schema extends z.ZodType> = F extends { readonly needed: true } ? Schema : Maybe<Schema>;

type SchemaOfField<F extends Field> = F extends { readonly type: "word"; readonly words: readonly (infer Word extends string)[] }
  ? F extends { readonly usual: string }
    ? z.ZodDefault<z.ZodType<Word, Word>>
    : Maybe<z.ZodType<Word, Word>>
  : F extends { readonly type: "figure" }
    ? Needed<F, z.ZodNumber>
    : F extends { readonly type: "lines" }
      ? z.ZodDefault<z.ZodString>
      : Needed<F, z.ZodString>;

type SchemaOf<One extends Field | Group> = One extends Group
  ? Maybe<z.ZodObject<{ [Key in keyof One["fields"]]: SchemaOfField<One["fields"][Key]> }, z.core.$strict>>
  : One extends Field
    ? SchemaOfField<One>
    : never;

export type ShapeOf<D extends Described> = { -readonly [Key in keyof D]: SchemaOf<D[Key]> };

/** The schemas of described fields, by name: what may be written in each, and what stands there where nothing was. */
export function shapeOf<const D extends Described>(described: D): ShapeOf<D> {
  const shape = Object.entries(described).map(([name, one]) => [name, schemaOf(one)]);
  return Object.fromEntries(shape) as ShapeOf<D>;
}

function schemaOf(one: Field | Group): z.ZodType {
  if (one.type !== "group") return schemaOfField(one);
  const fields = Object.entries(one.fields).map(([key, field]) => [key, schemaOfField(field)] as const);
  return maybe(mapping(Object.fromEntries(fields), one.says));
}

function schemaOfField(field: Field): z.ZodType {
  switch (field.type) {
    case "lines":
      return longText.describe(field.says);
    case "word": {
      const word = oneOf(field.words, field.says);
      return field.usual === undefined ? maybe(word) : word.default(field.usual);
    }
    case "figure": {
      const figure = quantity(field.unit, field.range, field.says);
      return field.needed === true ? figure : maybe(figure);
    }
    case "day":
      return maybe(day.describe(field.says));
    case "finish":
      return maybe(finishText.describe(field.says));
    default:
      return field.needed === true ? text(field.says) : maybe(text(field.says));
  }
}
