import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type CopyOfSources, copyOfSources } from "./copyOfSources.ts";

const FLOORS = ["engine", "words", "drawing", "contract", "exchange", "tasks", "records", "server", "cli", "web"];

/** What it is, the folder that it is put into, and the file. */
type Planted = readonly [name: string, folder: string, text: string];

const value = (name: string, from: string) => `import { ${name} } from "${from}";\nexport const planted = ${name};\n`;
const type = (name: string, from: string) => `import type { ${name} } from "${from}";\nexport type Planted = ${name};\n`;

/**
 * From floor to floor: both gates must refuse, by name and by path, values and types. All that lie in one folder are planted at once, and the compiler names
 * only the first file that brings another floor's in: each imports something else, of which nothing is brought in by those above it.
 */
const BETWEEN_FLOORS: readonly Planted[] = [
  ["engine imports words by name, a value", "engine/motion", value("fixed", "#words/figures")],
  ["engine imports drawing by name, a type", "engine/motion", type("Paint", "#drawing/paint")],
  ["engine imports contract by path, a value", "engine/motion", value("nearestWord", "../../contract/nearest.ts")],
  ["engine imports drawing by path, a type", "engine/motion", type("Point", "../../drawing/svg.ts")],
  ["web imports server by path, a type", "web", type("Stated", "../server/stated.ts")],
  ["web imports records by name", "web", value("shopFolder", "#records/folder")],
  ["web imports records by name, a type", "web", type("Records", "#records/records")],
  ["web imports server by name", "web", value("programVersion", "#server/version")],
  ["drawing imports contract by name", "drawing", value("nearestWord", "#contract/nearest")],
  ["drawing imports contract by path, a type", "drawing", type("CheckedJob", "../contract/job/jobFile.ts")],
  ["contract imports words by name", "contract", value("fixed", "#words/figures")],
  ["contract imports records by name", "contract", value("shopFolder", "#records/folder")],
  ["records imports exchange by path, a type", "records", type("TextOptions", "../exchange/measured/profileText.ts")],
  ["records imports server by name", "records", value("programVersion", "#server/version")],
  ["tasks imports server by name", "tasks", value("programVersion", "#server/version")],
];

/** Inside the engine, which the compiler sees as one floor: lint alone. */
const UPWARDS: readonly Planted[] = [
  ["motion imports planning by path", "engine/motion", value("decide", "../planning/steps.ts")],
  ["motion imports planning by path, a type", "engine/motion", type("FinishPlan", "../planning/plan.ts")],
  ["motion imports planning by name", "engine/motion", value("decide", "#engine/planning/steps")],
  ["motion imports planning by name, a type", "engine/motion", type("FinishPlan", "#engine/planning/plan")],
  [
    "motion names a type of planning without a statement",
    "engine/motion",
    'export type Planted = import("../planning/plan.ts").FinishPlan;\n',
  ],
  ["pins import worlds", "engine/pins", type("World", "../worlds/ensemble.ts")],
  ["worlds import planning", "engine/worlds", type("FinishPlan", "../planning/plan.ts")],
  ["lane imports contact", "engine/lane", value("frictionOf", "../contact/friction.ts")],
  ["ball imports motion", "engine/ball", type("Shot", "../motion/shot.ts")],
  ["learning imports video", "engine/learning", type("VideoRead", "../video/readSightings.ts")],
  ["the ground floor imports lane", "engine", type("Lane", "./lane/lane.ts")],
  ["the engine throws dice", "engine/motion", "export const planted = Math.random();\n"],
  ["the engine looks at the clock", "engine/motion", "export const planted = Date.now();\n"],
];

/** What no engine file can name: the compiler alone knows of none of it. */
const NOT_NAMED: readonly Planted[] = [
  ["the console", "engine/motion", 'console.log("planted");\n'],
  ["the process", "engine/motion", "export const planted = process.pid;\n"],
  ["the page", "engine/motion", "export const planted = document.title;\n"],
  ["the network", "engine/motion", 'export const planted = fetch("https://example.invalid");\n'],
  ["files", "engine/motion", 'import { readFileSync } from "node:fs";\nexport const planted = readFileSync;\n'],
];

const DOWNWARDS: Planted = ["downwards is allowed", "engine/motion", type("Lane", "../lane/lane.ts")];

/** A copy of the sources, fully built: without built files the compiler refuses more than it does in daily work. */
let copy: CopyOfSources;

beforeAll(() => {
  copy = copyOfSources(["src", "tools/lint", "package.json", "biome.jsonc", "tsconfig.base.json", ".gitignore"]);
  const built = compile(...FLOORS);
  if (built.status !== 0) throw new Error(`the copy does not build:\n${built.stdout}`);
}, 240_000);

afterAll(() => copy.remove());

function compile(...floors: string[]) {
  return copy.run("typescript/bin/tsc", "-b", ...floors.map((floor) => `src/${floor}`));
}

function lint(...paths: string[]) {
  const { stdout, stderr } = copy.run("@biomejs/biome/bin/biome", "lint", "--error-on-warnings", "--max-diagnostics=none", ...paths);
  return stdout + stderr;
}

interface Refused {
  readonly refusedByCompiler: boolean;
  readonly refusedByLint: boolean;
}

/** Puts files into one floor of the copy, lets both gates look at all of them at once, and takes them out again. What was said of each, in their order. */
function plant(folder: string, texts: readonly string[]): readonly Refused[] {
  const paths = texts.map((_, i) => `src/${folder}/planted${i}.ts`);
  for (const [i, path] of paths.entries()) writeFileSync(join(copy.folder, path), texts[i]);
  try {
    const compiled = compile(folder.split("/")[0]).stdout;
    const linted = lint(...paths);
    return paths.map((path) => ({
      // The compiler names a file by its place and where it refuses, the linter as a link with a line.
      refusedByCompiler: compiled.includes(`${path}(`),
      refusedByLint: linted.includes(`${path}:`),
    }));
  } finally {
    for (const path of paths) rmSync(join(copy.folder, path));
  }
}

/** What the gates say of everything that is planted. */
const refused = new Map<Planted, Refused>();

beforeAll(() => {
  const all = [...BETWEEN_FLOORS, ...UPWARDS, ...NOT_NAMED, DOWNWARDS];
  for (const folder of new Set(all.map(([, where]) => where))) {
    const planted = all.filter(([, where]) => where === folder);
    const said = plant(
      folder,
      planted.map(([, , text]) => text),
    );
    for (const [i, one] of planted.entries()) refused.set(one, said[i]);
  }
}, 240_000);

it("the copy without a planted violation passes both gates", { timeout: 120_000 }, () => {
  expect(compile(...FLOORS).status).toBe(0);
  expect(lint("src")).not.toMatch(/noRestrictedImports|noRestrictedGlobals|plugin/);
});

describe("between floors, refused by compiler and lint alike", () => {
  it.each(BETWEEN_FLOORS.map((planted) => [planted[0], planted] as const))("%s", (_, planted) => {
    expect(refused.get(planted)).toEqual({ refusedByCompiler: true, refusedByLint: true });
  });
});

describe("inside the engine, refused by lint", () => {
  it.each(UPWARDS.map((planted) => [planted[0], planted] as const))("%s", (_, planted) => {
    expect(refused.get(planted)?.refusedByLint).toBe(true);
  });

  it("also a ring of two files that only name each other's types", () => {
    const ring = [0, 1].map((i) => `src/drawing/ring${i}.ts`);
    for (const [i, path] of ring.entries()) writeFileSync(join(copy.folder, path), type("Planted", `./ring${1 - i}.ts`));
    expect(lint(...ring)).toContain("noImportCycles");
    for (const path of ring) rmSync(join(copy.folder, path));
  });

  it(DOWNWARDS[0], () => {
    expect(refused.get(DOWNWARDS)).toEqual({ refusedByLint: false, refusedByCompiler: false });
  });
});

describe("the engine cannot even name", () => {
  it.each(NOT_NAMED.map((planted) => [planted[0], planted] as const))("%s", (_, planted) => {
    expect(refused.get(planted)?.refusedByCompiler).toBe(true);
  });
});
