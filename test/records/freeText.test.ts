import { expect, it } from "vitest";
import { z } from "zod";
import { TABLE_RULES } from "#records/database/tableRules";
import { FREE } from "#records/personal/sweep";
import { KINDS } from "#records/things/kinds";

/** Typed, and yet nothing that a person is spoken of in; and why. */
const NOT_FREE: Readonly<Record<string, string>> = {
  initials: "of whoever signed, a person of the shop",
  serial: "as it stands on the ball",
  boxFinish: "checked as a finish",
  finish: "checked as a finish",
  finishBefore: "checked as a finish",
  finishAfter: "checked as a finish",
  pick: "of a plan, made by the program",
  engineVersion: "of a plan, made by the program",
  cautions: "of a plan, made by the program",
  ensemble: "made by the program",
  id: "made by the program",
  stageId: "made by the program",
  device: "made by the program",
  cautionsRead: "ids of cautions",
  from: "a side of the lane or a finish",
  to: "a side of the lane or a finish",
};

interface Json {
  readonly type?: string;
  readonly enum?: unknown;
  readonly const?: unknown;
  readonly pattern?: string;
  readonly properties?: Readonly<Record<string, Json>>;
  readonly items?: Json;
  readonly anyOf?: readonly Json[];
}

/** Names of the fields in which any text may stand. */
function freeIn(schema: Json, name: string): readonly string[] {
  const isFree = schema.type === "string" && schema.enum === undefined && schema.const === undefined && schema.pattern === undefined;
  return [
    ...(isFree ? [name] : []),
    ...Object.entries(schema.properties ?? {}).flatMap(([key, one]) => freeIn(one, key)),
    ...(schema.items === undefined ? [] : freeIn(schema.items, name)),
    ...(schema.anyOf ?? []).flatMap((one) => freeIn(one, name)),
  ];
}

const speaking = Object.entries(KINDS).filter(([kind]) => TABLE_RULES[kind as keyof typeof KINDS].bowlerStands === "in words");
const free = new Set(
  speaking.flatMap(([, { written }]) => freeIn(z.toJSONSchema(written, { io: "input", unrepresentable: "any" }) as Json, "")),
);

it("every field in which somebody may write a name is looked through when one is erased, or says why not", () => {
  expect([...free].filter((field) => !FREE.has(field) && !Object.hasOwn(NOT_FREE, field))).toEqual([]);
});

it("what is said not to be free is there", () => {
  expect(Object.keys(NOT_FREE).filter((field) => !free.has(field))).toEqual([]);
  expect([...FREE].filter((field) => !free.has(field))).toEqual([]);
});
