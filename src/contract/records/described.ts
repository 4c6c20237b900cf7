import type { Range } from "../job/fields.ts";

/*
 * What a kept thing consists of, said once, in plain data: the schema and the API's description, form and facts, search, lists that are brought in, and what goes
 * when a person is erased are all made from it. No schema is loaded with it: the page's forms come without one.
 */

interface AnyField {
  /** What it is, for whoever reads the API. */
  readonly says: string;
  /** What else a column of a list may be called that feeds it; without it, a list feeds it never. */
  readonly imported?: readonly string[];
}

/** What somebody types freely: a person may stand in it, and may be looked for by it. */
interface TypedField extends AnyField {
  /** How the person whose thing it is stands in it: their name, a number of theirs, or anything else that is theirs alone. */
  readonly personal: "name" | "number" | "words" | "no";
  /** How the thing is found by it: by beginnings of words, by a number or its end, by a serial or its end. */
  readonly found: "words" | "number" | "serial" | "no";
}

interface LineField extends TypedField {
  readonly type: "line" | "telephone" | "email";
  /** Whether the thing, or the group, is nothing without it. */
  readonly needed?: true;
}

interface WordField extends AnyField {
  readonly type: "word";
  readonly words: readonly [string, ...string[]];
  /** What stands where nothing is said; without it that is not known. */
  readonly usual?: string;
}

interface FigureField extends AnyField {
  readonly type: "figure";
  readonly unit: string;
  readonly range: Range;
  /** Whether it must stand where its group does. */
  readonly needed?: true;
}

/** Several lines, a day, or a finish. What several lines say is read nowhere but there, and goes with the thing. */
interface OtherField extends AnyField {
  readonly type: "lines" | "day" | "finish";
}

export type Field = LineField | WordField | FigureField | OtherField;

/** Fields that are kept together or not at all. */
export interface Group {
  readonly type: "group";
  readonly says: string;
  readonly fields: Readonly<Record<string, Field>>;
}

export type Described = Readonly<Record<string, Field | Group>>;

/** Names of the fields as the page and the server's refusals have them: `phone`, `guardian.phone`. */
export type PathIn<D extends Described> = {
  [Key in keyof D & string]: D[Key] extends Group ? `${Key}.${keyof D[Key]["fields"] & string}` : Key;
}[keyof D & string];

/** One field with its place in the thing. */
export interface Placed {
  readonly path: string;
  /** Null for a field of the thing itself. */
  readonly group: string | null;
  readonly key: string;
  readonly field: Field;
}

/** Every field, those of groups too, in their order. */
export function placedIn(described: Described): readonly Placed[] {
  return Object.entries(described).flatMap(([name, one]): Placed[] =>
    one.type === "group"
      ? Object.entries(one.fields).map(([key, field]) => ({ path: `${name}.${key}`, group: name, key, field }))
      : [{ path: name, group: null, key: name, field: one }],
  );
}

/** What stands in a field of a thing; null where nothing does. */
export function valueAt(thing: object, { group, key }: Pick<Placed, "group" | "key">): unknown {
  const within: unknown = group === null ? thing : Reflect.get(thing, group);
  return typeof within === "object" && within !== null ? (Reflect.get(within, key) ?? null) : null;
}

/** What somebody typed into a thing, with what it is to search and to erasing. */
export type TypedText = Pick<TypedField, "personal" | "found"> & { readonly text: string };

/** Everything that somebody typed into the fields of a thing, but for several lines. */
export function textsIn(described: Described, thing: object): readonly TypedText[] {
  return placedIn(described).flatMap((placed) => {
    const { field } = placed;
    const text = valueAt(thing, placed);
    return "personal" in field && typeof text === "string" ? [{ personal: field.personal, found: field.found, text }] : [];
  });
}
