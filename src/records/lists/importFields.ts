import { ballWritten } from "#contract/records/ball";
import { bowlerWritten } from "#contract/records/bowler";
import type { Fields } from "../things/definition.ts";
import type { ImportKind } from "./lists.ts";

/** A field that a column may feed: what else people call it, and how its text is read. */
interface ImportField {
  readonly alsoCalled: readonly string[];
  readonly put: (into: Fields, text: string) => void;
}

function plainField(field: string, ...alsoCalled: string[]): [string, ImportField] {
  return [field, { alsoCalled, put: (into, text) => Object.assign(into, { [field]: text }) }];
}

/** Words that are fixed: any case will do. */
function wordField(field: string, ...alsoCalled: string[]): [string, ImportField] {
  return [field, { alsoCalled, put: (into, text) => Object.assign(into, { [field]: text.toLowerCase() }) }];
}

/** `owner` is no field of a ball: the bowler of that name is looked for. */
export const OWNER = "owner";

export const IMPORT_FIELDS: Readonly<Record<ImportKind, Readonly<Record<string, ImportField>>>> = {
  bowlers: Object.fromEntries([
    plainField("name", "bowler", "customer", "full name"),
    plainField("phone", "telephone", "mobile", "phone number"),
    plainField("email", "mail", "e-mail"),
    plainField("address"),
    wordField("hand", "bowling hand"),
    wordField("grip", "style"),
    plainField("notes", "note", "remarks"),
  ]),
  balls: Object.fromEntries([
    plainField("name", "ball"),
    plainField("serial", "serial number", "serial no"),
    [OWNER, { alsoCalled: ["bowler", "customer"], put: (into, text) => Object.assign(into, { [OWNER]: text }) }],
    wordField("cover", "coverstock"),
    wordField("job"),
    plainField("boxFinish", "box finish", "factory finish"),
    ["massLb", { alsoCalled: ["weight", "mass", "lb"], put: (into, text) => Object.assign(into, { core: { massLb: numberOf(text) } }) }],
    plainField("purchasedOn", "bought", "purchased"),
    plainField("drilledOn", "drilled"),
    plainField("notes", "note", "remarks"),
  ]),
};

export const IMPORT_SCHEMAS = { bowlers: bowlerWritten, balls: ballWritten } as const;

/** A number as it is written with a point or a comma; otherwise the text itself, which the schema then refuses. */
function numberOf(text: string): number | string {
  const value = Number(text.replace(",", "."));
  return Number.isFinite(value) ? value : text;
}
