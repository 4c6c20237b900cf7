import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type CopyOfSources, copyOfSources } from "../floors/copyOfSources.ts";
import { onTheCounter, testShop } from "../records/shop.ts";
import { COPIED, compiled, formsIn, mustBuild, printed } from "./builtCopy.ts";

/**
 * A second telephone is put into the description of a bowler in a copy, with its name in two languages, and into nothing else. Schema, API, form, facts, search,
 * lists in and out and erasing then have to know it.
 */
const FIELD = "secondPhone";
const FIELD_RECORD = `  ${FIELD}: {
    type: "telephone",
    says: "A second telephone number",
    personal: "number",
    found: "number",
    imported: ["other phone"],
  },
`;
const WORDS = { en: "Second telephone", de: "Zweites Telefon" } as const;
const NUMBER = "0611 123777";
const NEWER = "0611 445566";

let copy: CopyOfSources;
/** What the compiler refuses when only the description has it, and when English has its name too. */
let refused: { readonly description: ReturnType<typeof compiled>; readonly english: ReturnType<typeof compiled> };
// biome-ignore lint/suspicious/noExplicitAny: what the probe printed; each expectation says what it is.
let said: any;

beforeAll(async () => {
  copy = copyOfSources(COPIED);
  copy.plant("src/contract/records/bowlerFields.ts", "  email: {", FIELD_RECORD);
  const description = compiled(copy);
  copy.plant("src/words/en/rooms/bowler.ts", '    email: "E-mail",', `    ${FIELD}: "${WORDS.en}",\n`);
  refused = { description, english: compiled(copy) };
  copy.plant("src/words/de/rooms/bowler.ts", '    email: "E-Mail",', `    ${FIELD}: "${WORDS.de}",\n`);
  mustBuild(copy);
  // Kept by the program of today, which knows of no second telephone.
  const folder = join(copy.folder, "shop");
  const shop = await testShop({ folder });
  await onTheCounter(shop);
  await shop.records.close();
  const csv = "name,Other phone\nBea Wren,0611 998877\n";
  said = JSON.parse(printed(copy, "test/registries/probeField.mjs", folder, FIELD, NUMBER, csv, NEWER));
}, 240_000);

afterAll(() => copy.remove());

describe("the compiler asks for the name of a new field", () => {
  it("in English, where the form and the lists are made", () => {
    expect(refused.description.said).toContain(`'"${FIELD}"' is missing`.replaceAll('"', ""));
    expect(refused.description.refused).toEqual(["src/web/rooms/bowler/Contacts.tsx"]);
  });

  it("then in every other language", () => {
    expect(refused.english.refused).toEqual(["src/words/de/rooms/bowler.ts"]);
  });
});

describe("a planted field of a bowler", () => {
  it("is not known of a bowler whom an older version kept", () => {
    expect(said.older).toEqual([null]);
  });

  it("finds the bowler, whole and by its end, and no longer after a change", () => {
    expect(said.found).toEqual([["Ana Plover"], ["Ana Plover"]]);
    expect(said.foundAfter).toEqual([[], ["Ana Plover"]]);
  });

  it("is fed by a column of a list, under its other name", () => {
    expect(said.preview.fields).toContain(FIELD);
    expect(said.preview.mapping["Other phone"]).toBe(FIELD);
    expect(said.preview.sample[0][FIELD]).toBe("0611 998877");
  });

  it("goes out with everything, and with what is kept of the person", () => {
    expect(said.table).toContain(FIELD);
    expect(said.table).toContain("0611 998877");
    expect(said.personal).toContain(NEWER);
  });

  it("is erased with the person, and wherever else it was written", () => {
    expect(said.erased).toEqual({ own: null, elsewhere: "ask (erased) for the lanes", found: [], leftAnywhere: false });
  });

  it("stands in the component of the API's description, for those who may see and change a bowler", () => {
    const { written, read, given, roles } = said.openApi;
    expect(JSON.stringify(written)).toContain("A second telephone number");
    expect(JSON.stringify(read)).toContain("A second telephone number");
    expect(given).toEqual({ $ref: "#/components/schemas/Bowler" });
    expect(roles).toEqual([[{ session: ["reader"] }], [{ session: ["counter"] }]]);
  });

  it.each(["en", "de"] as const)("is typed and shown, in %s", { timeout: 120_000 }, async (language) => {
    const { contacts, contactFacts } = await formsIn(copy, language);
    expect(contacts).toContain(`>${WORDS[language]}</label>`);
    expect(contacts).toMatch(new RegExp(`type="tel"[^>]*value="as ${FIELD}"`));
    expect(contactFacts).toContainEqual({ path: FIELD, label: WORDS[language], text: `as ${FIELD}` });
  });
});
