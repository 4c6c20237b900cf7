import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ASSUMPTIONS } from "#engine/assumptions";
import { type CopyOfSources, copyOfSources } from "../floors/copyOfSources.ts";
import { onTheCounter, testShop } from "../records/shop.ts";
import { COPIED, compiled, formsIn, mustBuild, printed } from "./builtCopy.ts";
import { COVER_ID, COVER_RECORD, NUMBER, PAD_RECORD, WORD_FILES, WORDS } from "./plantedRecords.ts";

/**
 * A cover and a number of a pad that nobody makes are put into the registries of a copy, one record each, and into nothing else. Every law, rule, form, drawing,
 * file, list and language then has to answer from the record; that no answer is right by chance, each field differs from what is taken of a cover like it.
 */
let copy: CopyOfSources;
/** Files that the compiler refuses when only the records are planted. */
let refused: readonly string[] = [];
// biome-ignore lint/suspicious/noExplicitAny: what the probe printed; each expectation says what it is.
let said: any;

beforeAll(() => {
  copy = copyOfSources(COPIED);
  copy.plant("src/engine/ball/covers.ts", "} as const satisfies Record<string, Cover>;", COVER_RECORD);
  copy.plant("src/engine/surface/pads.ts", "] as const satisfies readonly Pad[];", PAD_RECORD);
  ({ refused } = compiled(copy));
  for (const language of ["en", "de"] as const) copy.plant(WORD_FILES[language], '  solid: "', `  ${COVER_ID}: "${WORDS[language]}",\n`);
  mustBuild(copy);
  said = JSON.parse(printed(copy, "test/registries/probe.mjs", COVER_ID, String(NUMBER)));
}, 240_000);

afterAll(() => copy.remove(), 120_000);

const gritwright = (...words: string[]) => printed(copy, "dist/cli/main.js", ...words);

it("the compiler asks for the words of a new cover, in every language, and for nothing else", () => {
  expect(refused).toEqual(Object.values(WORD_FILES).toSorted());
});

describe("of a planted cover", () => {
  it("friction, carried oil, wear and fade are those that its record names", () => {
    const { laws } = said;
    expect(laws.contact.dry).toBe(laws.likeUrethane.dry);
    expect(laws.contact.dry).not.toBe(laws.likePearl.dry);
    expect(laws.contact.halfFilmUm).toBe(laws.likePearl.halfFilmUm);
    expect(laws.carriesLikePolyester).toBe(true);
    expect(laws.laidDown).toBe(0);
    expect(laws.fade.levelUm).toBe(ASSUMPTIONS["fade.level.urethane"].value);
    expect(laws.fade.games).toBe(ASSUMPTIONS["fade.games.polyester"].value);
    expect(laws.hardness).toBe(91);
  });

  it("a plan rests on the assumptions that it names, and on those of no other cover", () => {
    const own = ["friction.dry.urethane", "filmReach.pearl", "carriedOil.polyester", "wear.laidDown.urethane"];
    const ofCovers = said.laws.assumptions.filter((id: string) => /\.(polyester|urethane|solid|hybrid|pearl|reactive)$/.test(id));
    expect(ofCovers.toSorted()).toEqual(own.toSorted());
  });

  it("a ball of which nobody knows the cover may have it, and a bag may lack it", () => {
    expect(said.laws.unknown).toContain(COVER_ID);
    expect(said.laws.gaps).toContain(COVER_ID);
    expect(said.laws.known).toBe(COVER_ID);
  });

  it("care, cautions and rules of thumb are as its record says", () => {
    expect(said.laws.care.extraction.value).toBeNull();
    expect(said.laws.care.resurfacing.value).toBeNull();
    expect(said.rules.cautions).toContain("wetPaper");
    expect(said.rules.speak).toEqual(["urethaneRange", "weakHookDull", "dullerIsEarlier"]);
    expect(said.rules.paper.map(({ id }: { id: string }) => id)).not.toContain("recipe.paperOnResin");
    expect(said.rules.tooDull).toContainEqual({ id: "recipe.never", number: 500, least: 800 });
  });

  it("its bench work takes paper, begins where it stands a deep cut, and opens nothing before oil is drawn", () => {
    expect(said.rules.deepWear[1]).toBe("paper-P800");
    expect(said.rules.soaked.slice(0, 3)).toEqual(["clean", "extract", "dryOff"]);
  });

  it("a finish plan compares its usual finishes", { timeout: 120_000 }, () => {
    const job = { gritwright: 1, seed: 1, ball: { cover: COVER_ID, finish: 1500 }, lane: { pattern: "medium-41" } };
    writeFileSync(join(copy.folder, "job.json"), JSON.stringify(job));
    const plan = JSON.parse(gritwright("plan", "job.json", "--json"));
    expect(plan.candidates.map(({ finish }: { finish: string }) => finish)).toEqual(["800", "1500", "6000", "6000 + polish"]);
    expect(plan.rules.map(({ rule }: { rule: string }) => rule)).toContain("urethaneRange");
  });

  it("a list brings it in, it is kept, and goes out again", { timeout: 120_000 }, async () => {
    const shop = await testShop({ folder: join(copy.folder, "shop") });
    await onTheCounter(shop);
    await shop.records.close();
    writeFileSync(join(copy.folder, "balls.csv"), `name,serial,cover,boxFinish\nInvented,INV-1,${COVER_ID},${NUMBER} + polish\n`);
    gritwright("import", "balls", "balls.csv", join(copy.folder, "shop"), "--apply");
    const { files } = JSON.parse(gritwright("export", join(copy.folder, "shop"), join(copy.folder, "out"), "--json"));
    expect(files).toContain("balls.csv");
    const kept = readFileSync(join(copy.folder, "out", "balls.csv"), "utf8");
    expect(kept).toContain(COVER_ID);
    expect(kept).toContain(`${NUMBER} + polish`);
  });
});

describe("of a planted number", () => {
  it("roughness and grain are its own, and a worn pad before it cuts like it", () => {
    const { number } = said;
    expect(number.raUm).toBeCloseTo(0.15, 12);
    expect(number.grainUm).toBe(3.5);
    expect(number.wornUm).toBeCloseTo(0.15, 12);
  });

  it("beyond it an answer is refused by field, value and what is allowed", () => {
    expect(said.number.beyond).toEqual([
      [`finish: 7000, allowed: a number from 360 to ${NUMBER}, with or without polish over it: 2000, "1000 + polish"`],
      [`finish: 7000, allowed: a number from 240 to ${NUMBER}: outside it nobody knows what it leaves`],
    ]);
  });

  it("the ladder goes up to it, and the stages end with its pad", () => {
    expect(said.number.ladder.at(-1)).toBe(NUMBER);
    expect(said.number.stages.slice(-3)).toEqual([`pad-${NUMBER}`, "cutting-polish", "check"]);
  });

  it("a drawing has finer grains for it", () => {
    const [own, coarser] = said.number.stipple;
    expect(own).toBeLessThan(coarser);
    expect(said.number.swatch).toContain(`${NUMBER}`);
    expect(said.number.fan).not.toContain("NaN");
  });

  it("it is offered at the counter as its record says", () => {
    expect(said.number.counter).toEqual([`${NUMBER}`, `${NUMBER} + polish`]);
  });
});

describe("files", () => {
  it("take the planted cover and number", () => {
    const { job, bag, ownNumber } = said.files;
    expect([job, bag, ownNumber]).toEqual([[], [], []]);
  });

  it("refuse others, and name these among what is allowed", () => {
    expect(said.files.otherCover[0]).toContain(COVER_ID);
    expect(said.files.otherNumber[0]).toContain(`5000, ${NUMBER}`);
    expect(said.files.ownBeyond[0]).toContain(`240 to ${NUMBER}`);
  });
});

describe("languages and forms", () => {
  it("cover and pad have their names", () => {
    expect(said.words).toEqual({ en: [WORDS.en, `pad ${NUMBER}`], de: [WORDS.de, `Pad ${NUMBER}`] });
  });

  it.each(["en", "de"] as const)("the forms offer both, in %s", { timeout: 120_000 }, async (language) => {
    const forms = await formsIn(copy, language);
    expect(forms.newBall).toContain(WORDS[language]);
    expect(forms.wanted).toContain(`>${NUMBER} + polish<`);
    expect(forms.bag).toContain(`>${NUMBER}<`);
    expect(forms.otherPads[`pad-${NUMBER}`]).toBe(said.words[language][1]);
  });
});
