import { ballWritten } from "#contract/records/ball";
import { BALL_FIELDS } from "#contract/records/ballFields";
import { bowlerWritten } from "#contract/records/bowler";
import { BOWLER_FIELDS } from "#contract/records/bowlerFields";
import { type Described, type Placed, placedIn } from "#contract/records/described";
import type { Fields } from "../things/definition.ts";
import type { ImportKind } from "./lists.ts";

/** A field that a column may feed: what else people call it, and how its text is read. */
interface ImportField {
  readonly alsoCalled: readonly string[];
  readonly put: (into: Fields, text: string) => void;
}

/** `owner` is no field of a ball: the bowler of that name is looked for. */
export const OWNER = "owner";

export const IMPORT_FIELDS: Readonly<Record<ImportKind, Readonly<Record<string, ImportField>>>> = {
  bowlers: importedIn(BOWLER_FIELDS),
  balls: {
    ...importedIn(BALL_FIELDS),
    [OWNER]: { alsoCalled: ["bowler", "customer"], put: (into, text) => Object.assign(into, { [OWNER]: text }) },
  },
};

/** The fields that their description lets a list feed. One in a group goes by its own name: `massLb`. */
function importedIn(described: Described): Record<string, ImportField> {
  return Object.fromEntries(
    placedIn(described).flatMap((placed) => {
      const { imported: alsoCalled } = placed.field;
      return alsoCalled === undefined ? [] : [[placed.key, { alsoCalled, put: (into: Fields, text: string) => put(into, placed, text) }]];
    }),
  );
}

function put(into: Fields, { group, key, field }: Placed, text: string): void {
  // Words are fixed: any case will do.
  const value = field.type === "word" ? text.toLowerCase() : field.type === "figure" ? numberOf(text) : text;
  Object.assign(into, group === null ? { [key]: value } : { [group]: { ...(into[group] as Fields | undefined), [key]: value } });
}

export const IMPORT_SCHEMAS = { bowlers: bowlerWritten, balls: ballWritten } as const;

/** A number as it is written with a point or a comma; otherwise the text itself, which the schema then refuses. */
function numberOf(text: string): number | string {
  const value = Number(text.replace(",", "."));
  return Number.isFinite(value) ? value : text;
}
