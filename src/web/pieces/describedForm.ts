import { type Described, type Field, type PathIn, type Placed, placedIn, valueAt } from "#contract/records/described";
import { figureOrNull, figureText, textOrNull, typedOf } from "../shop/typedValues.ts";
import type { Typed } from "../shop/useEditing.ts";
import type { ShopTimes, SpeedUnit } from "../shop/zone.ts";
import type { EditField } from "./EditForm.tsx";

export type Label = string | ((unit: string) => string);
type WordKeys<D extends Described> = { [Key in keyof D & string]: D[Key] extends { readonly type: "word" } ? Key : never }[keyof D &
  string];
type WordsOf<F> = F extends { readonly words: readonly (infer Word extends string)[] } ? Word : never;

/** What the fields of a thing are called; the compiler asks for every one, and for every word that may be chosen. */
export interface FieldWords<D extends Described> {
  readonly fields: Readonly<Record<PathIn<D>, Label>>;
  readonly helps: Readonly<Partial<Record<PathIn<D>, string>>>;
  readonly choices: { readonly [Key in WordKeys<D>]: Readonly<Record<WordsOf<D[Key]>, string>> };
  /** What stands in a list of words for none of them. */
  readonly unknown: string;
}

/** A field with what stands in it, as it is shown. */
interface Fact {
  readonly path: string;
  readonly label: string;
  readonly text: string;
}

/** A form over described fields, and the same as facts. */
export interface DescribedForm {
  readonly fields: readonly EditField[];
  typedOf(thing: object): Typed;
  /** Only what was touched; a group goes as a whole, and is none where nothing stands in it. */
  changeOf(thing: object, typed: Typed, changed: ReadonlySet<string>): Readonly<Record<string, unknown>>;
  /** What is known of a thing; a field of which nothing is known is left out, but for those that `unknown` has words for. */
  factsOf(thing: object, times: ShopTimes, unknown?: (path: string) => string): readonly Fact[];
}

/** @param speed speeds are shown and typed in the shop's unit */
export function describedForm<const D extends Described>(described: D, words: FieldWords<D>, speed: SpeedUnit): DescribedForm {
  const placed = placedIn(described);
  const typedIn = (thing: object, one: Placed): string => {
    const value = valueAt(thing, one) as string | number | null;
    return isSpeed(one.field) ? speed.typed(value as number | null) : typedOf(value);
  };
  const fields = placed.map((one) => editField(one, words as unknown as AnyWords, speed));
  return {
    fields,
    typedOf: (thing) => Object.fromEntries(placed.map((one) => [one.path, typedIn(thing, one)])),
    changeOf: (thing, typed, changed) => {
      const touched = new Set(placed.filter(({ path }) => changed.has(path)).map(({ group, key }) => group ?? key));
      const read = (one: Placed) => {
        const before = valueAt(thing, one);
        // What was not touched stays to the last digit: in the shop's own unit a speed is rounded.
        return changed.has(one.path) || before === null ? readFrom(one.field, typed[one.path] ?? "", speed) : before;
      };
      return Object.fromEntries(
        [...touched].map((name) => {
          const own = placed.filter(({ group, key }) => (group ?? key) === name);
          if (own[0].group === null) return [name, read(own[0])];
          const values = own.map((one) => [one.key, read(one)] as const);
          return [name, values.every(([, value]) => value === null || value === "") ? null : Object.fromEntries(values)];
        }),
      );
    },
    factsOf: (thing, times, unknown) =>
      placed.flatMap((one, i) => {
        const typed = typedIn(thing, one);
        const text = typed === "" ? unknown?.(one.path) : shownText(one.field, fields[i], typed, times);
        return text === undefined ? [] : [{ path: one.path, label: fields[i].label, text }];
      }),
  };
}

interface AnyWords {
  readonly fields: Readonly<Record<string, Label>>;
  readonly helps: Readonly<Record<string, string | undefined>>;
  readonly choices: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly unknown: string;
}

function editField({ path, field }: Placed, { fields, helps, choices, unknown }: AnyWords, speed: SpeedUnit): EditField {
  const [label, help] = [fields[path], helps[path]];
  const common = { path, label: typeof label === "string" ? label : label(speed.unit), ...(help === undefined ? {} : { help }) };
  switch (field.type) {
    case "word":
      return { ...common, words: field.usual === undefined ? { "": unknown, ...choices[path] } : choices[path] };
    case "figure":
      return { ...common, as: "number" };
    case "day":
      return { ...common, as: "date" };
    case "telephone":
      return { ...common, as: "tel" };
    case "lines":
    case "email":
      return { ...common, as: field.type };
    default:
      return common;
  }
}

/** What was typed as it is kept. What the shop will not take goes out as it is: the shop says what is allowed, beside the field. */
function readFrom(field: Field, typed: string, speed: SpeedUnit): unknown {
  if (field.type === "lines") return typed;
  if (field.type === "figure") {
    const figure = figureOrNull(typed);
    return isSpeed(field) && typeof figure === "number" ? speed.mph(figure) : figure;
  }
  return "needed" in field ? typed.trim() : textOrNull(typed);
}

function shownText(field: Field, { words }: EditField, typed: string, times: ShopTimes): string {
  if (field.type === "figure") return figureText(Number(typed));
  return field.type === "day" ? times.date(typed) : (words?.[typed] ?? typed);
}

function isSpeed(field: Field): boolean {
  return field.type === "figure" && field.unit === "mph";
}
