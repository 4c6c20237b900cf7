import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "..", "..");
const FLOORS = ["engine", "words", "drawing", "contract", "exchange", "tasks", "records", "server", "cli", "web"];

/** A copy of the sources, fully built: without built files the compiler refuses more than it does in daily work. */
let copy = "";

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), "gritwright-floors-"));
  for (const name of ["src", "tools/lint", "package.json", "biome.jsonc", "tsconfig.base.json", ".gitignore"]) {
    cpSync(join(ROOT, name), join(copy, name), { recursive: true });
  }
  symlinkSync(join(ROOT, "node_modules"), join(copy, "node_modules"), "junction");
  const built = compile(...FLOORS);
  if (built.status !== 0) throw new Error(`the copy does not build:\n${built.stdout}`);
}, 240_000);

afterAll(() => rmSync(copy, { recursive: true, force: true }));

function compile(...floors: string[]) {
  return runTool("typescript/bin/tsc", "-b", ...floors.map((floor) => `src/${floor}`));
}

function lint(path: string) {
  return runTool("@biomejs/biome/bin/biome", "lint", "--error-on-warnings", path);
}

function runTool(program: string, ...args: string[]) {
  return spawnSync(process.execPath, [join(ROOT, "node_modules", ...program.split("/")), ...args], { cwd: copy, encoding: "utf8" });
}

/** Puts a file into the copy, lets both gates look at it, and takes it out again. */
function plant(path: string, text: string) {
  const file = join(copy, "src", path);
  writeFileSync(file, text);
  try {
    const [floor] = path.split("/");
    const compiled = compile(floor);
    return { refusedByCompiler: compiled.status !== 0 && compiled.stdout.includes(path), refusedByLint: lint(`src/${path}`).status !== 0 };
  } finally {
    rmSync(file);
  }
}

it("the copy without a planted violation passes both gates", { timeout: 120_000 }, () => {
  expect(compile(...FLOORS).status).toBe(0);
  expect(lint("src").stdout + lint("src").stderr).not.toMatch(/noRestrictedImports|noRestrictedGlobals|plugin/);
});

const value = (name: string, from: string) => `import { ${name} } from "${from}";\nexport const planted = ${name};\n`;
const type = (name: string, from: string) => `import type { ${name} } from "${from}";\nexport type Planted = ${name};\n`;

/** From floor to floor: both gates must refuse, by name and by path, values and types. */
const BETWEEN_FLOORS: readonly [string, string, string][] = [
  ["engine imports drawing by name, a value", "engine/motion/planted.ts", value("laneChart", "#drawing/laneChart")],
  ["engine imports drawing by name, a type", "engine/motion/planted.ts", type("LaneChartInput", "#drawing/laneChart")],
  ["engine imports drawing by path, a value", "engine/motion/planted.ts", value("laneChart", "../../drawing/laneChart.ts")],
  ["engine imports drawing by path, a type", "engine/motion/planted.ts", type("LaneChartInput", "../../drawing/laneChart.ts")],
  ["web imports server by name", "web/planted.ts", value("app", "#server/app")],
  ["web imports server by name, a type", "web/planted.ts", type("AppParts", "#server/app")],
  ["web imports server by path, a type", "web/planted.ts", type("AppParts", "../server/app.ts")],
  ["drawing imports contract by name", "drawing/planted.ts", value("checkJob", "#contract/job/checkJob")],
  ["drawing imports contract by path, a type", "drawing/planted.ts", type("CheckedJob", "../contract/job/jobFile.ts")],
  ["contract imports words by name", "contract/planted.ts", value("messageText", "#words/messageText")],
  ["web imports records by name, a type", "web/planted.ts", type("Records", "#records/records")],
  ["contract imports records by name", "contract/planted.ts", value("openRecords", "#records/openRecords")],
  ["records imports server by name", "records/planted.ts", value("app", "#server/app")],
  ["records imports exchange by path, a type", "records/planted.ts", type("TextOptions", "../exchange/measured/profileText.ts")],
  ["tasks imports server by name", "tasks/planted.ts", value("computePool", "#server/computePool")],
];

describe("between floors, refused by compiler and lint alike", () => {
  it.each(BETWEEN_FLOORS)("%s", { timeout: 60_000 }, (_, path, text) => {
    expect(plant(path, text)).toEqual({ refusedByCompiler: true, refusedByLint: true });
  });
});

/** Inside the engine, which the compiler sees as one floor: lint alone. */
const UPWARDS: readonly [string, string, string][] = [
  ["motion imports planning by path", "engine/motion/planted.ts", value("decide", "../planning/steps.ts")],
  ["motion imports planning by path, a type", "engine/motion/planted.ts", type("FinishPlan", "../planning/plan.ts")],
  ["motion imports planning by name", "engine/motion/planted.ts", value("decide", "#engine/planning/steps")],
  ["motion imports planning by name, a type", "engine/motion/planted.ts", type("FinishPlan", "#engine/planning/plan")],
  [
    "motion names a type of planning without a statement",
    "engine/motion/planted.ts",
    'export type Planted = import("../planning/plan.ts").FinishPlan;\n',
  ],
  ["lane imports contact", "engine/lane/planted.ts", value("frictionOf", "../contact/friction.ts")],
  ["ball imports motion", "engine/ball/planted.ts", type("Shot", "../motion/shot.ts")],
  ["the ground floor imports lane", "engine/planted.ts", type("Lane", "./lane/lane.ts")],
  ["the engine throws dice", "engine/motion/planted.ts", "export const planted = Math.random();\n"],
  ["the engine looks at the clock", "engine/motion/planted.ts", "export const planted = Date.now();\n"],
];

describe("inside the engine, refused by lint", () => {
  it.each(UPWARDS)("%s", { timeout: 60_000 }, (_, path, text) => {
    expect(plant(path, text).refusedByLint).toBe(true);
  });

  it("downwards is allowed", { timeout: 60_000 }, () => {
    const { refusedByLint, refusedByCompiler } = plant("engine/motion/planted.ts", type("Lane", "../lane/lane.ts"));
    expect({ refusedByLint, refusedByCompiler }).toEqual({ refusedByLint: false, refusedByCompiler: false });
  });
});

describe("the engine cannot even name", () => {
  it.each([
    ["the console", 'console.log("planted");\n'],
    ["the process", "export const planted = process.pid;\n"],
    ["the page", "export const planted = document.title;\n"],
    ["the network", 'export const planted = fetch("https://example.invalid");\n'],
    ["files", 'import { readFileSync } from "node:fs";\nexport const planted = readFileSync;\n'],
  ])("%s", { timeout: 60_000 }, (_, text) => {
    expect(plant("engine/motion/planted.ts", text).refusedByCompiler).toBe(true);
  });
});
