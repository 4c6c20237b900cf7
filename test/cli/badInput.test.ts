import { truncateSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { errorDocumentSchema } from "#contract/errorDocument";
import { built, EXAMPLES, fileWith, inProcess, scratchFolder } from "./commandLine.ts";

const job = (change: string) => fileWith(`gritwright: 1\nball: { cover: hybrid, finish: 2000 }\nlane: { pattern: medium-41 }\n${change}\n`);
const letters = "abcdefghij";
const aliasBomb = [...letters].map(
  (name, i) =>
    `${name}: &${name} [${Array(10)
      .fill(i === 0 ? "1" : `*${letters[i - 1]}`)
      .join(",")}]`,
);

function largeFile(): string {
  const path = fileWith("");
  truncateSync(path, 50_000_000);
  return path;
}

/** What is given, the error's code, the place it names, and something its message says. */
const CASES: readonly [string, () => string, string, string, RegExp][] = [
  [
    "an unknown cover",
    () => fileWith("gritwright: 1\nball: { cover: wood, finish: 2000 }\nlane: { pattern: medium-41 }"),
    "invalid",
    "ball.cover",
    /polyester, urethane, solid, hybrid, pearl/,
  ],
  ["speed 0", () => job("bowler: { speedMph: 0 }"), "invalid", "bowler.speedMph", /0 < x ≤ 40 mph/],
  ["rotation 200°", () => job("bowler: { axisRotationDeg: 200 }"), "invalid", "bowler.axisRotationDeg", /180 deg/],
  ["an infinite speed", () => job("bowler: { speedMph: .inf }"), "invalid", "bowler.speedMph", /0 < x ≤ 40 mph/],
  [
    "a pattern longer than the lane",
    () =>
      fileWith(
        "gritwright: 1\nball: { cover: solid, finish: 500 }\nlane: { filmPoints: { lengthFt: 75, unit: um, points: [{ board: 20, ft: 10, film: 2 }] } }",
      ),
    "invalid",
    "lane.filmPoints.lengthFt",
    /60 ft/,
  ],
  [
    "an oil sheet whose total disagrees",
    () =>
      fileWith(`gritwright: 1
ball: { cover: solid, finish: 500 }
lane:
  oilSheet:
    lengthFt: 40
    stated: { totalMl: 20 }
    passes: [{ direction: out, fromBoard: 2, toBoard: 38, times: 2, perBoardMicrolitres: 50, fromFt: 0, toFt: 40 }]`),
    "invalid",
    "lane.oilSheet.stated.totalMl",
    /20\.00 mL.*3\.70 mL/,
  ],
  ["an unknown key", () => job("bowler: { speedMhp: 17 }"), "invalid", "bowler.speedMhp", /did you mean speedMph\?/],
  [
    "polish alone",
    () => fileWith("gritwright: 1\nball: { cover: solid, finish: polish }\nlane: { pattern: medium-41 }"),
    "invalid",
    "ball.finish",
    /1000 \+ polish/,
  ],
  ["a finish the cover is never given", () => job('candidates: ["360"]\nreason: to see'), "invalid", "candidates[0]", /500/],
  [
    "a candidate outside the usual range without a reason",
    () => fileWith('gritwright: 1\nball: { cover: pearl, finish: 3000 }\nlane: { pattern: medium-41 }\ncandidates: ["800"]'),
    "invalid",
    "candidates[0]",
    /reason/,
  ],
  [
    "another version",
    () => fileWith("gritwright: 2\nball: { cover: solid, finish: 500 }\nlane: { pattern: medium-41 }"),
    "invalid",
    "gritwright",
    /version 1/,
  ],
  ["friction where oil is wanted", () => join(EXAMPLES, "one-shot.yaml"), "invalid", "lane.friction", /needs oil/],
  ["duplicate keys", () => job("lane: { pattern: light-38 }"), "syntax", "", /Line 4.*"lane".*second time/],
  ["neither YAML nor JSON", () => fileWith("gritwright: [1"), "syntax", "", /Line \d+, column \d+/],
  ["an alias bomb", () => fileWith(aliasBomb.join("\n")), "syntax", "", /aliases/],
  ["an empty file", () => fileWith(""), "unreadable", "", /nothing in the file/],
  ["50 MB", largeFile, "unreadable", "", /50000000 bytes/],
  ["a folder", () => scratchFolder(), "unreadable", "", /folder/],
  ["no file", () => join(tmpdir(), "gritwright-none", "job.yaml"), "unreadable", "", /There is no file/],
  ["a picture", () => fileWith(new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe])), "unreadable", "", /UTF-8/],
];

describe("bad input ends with 2 and says what is wrong", () => {
  it.each(CASES)("%s", async (_, given, code, path, message) => {
    const file = given();
    const asText = await inProcess("plan", file);
    expect(asText.code).toBe(2);
    expect(asText.stdout).toBe("");
    expect(asText.stderr).toMatch(message);

    const asJson = await inProcess("plan", file, "--json");
    expect(asJson.code).toBe(2);
    const { error } = errorDocumentSchema.parse(JSON.parse(asJson.stdout));
    expect(error).toMatchObject({ code, problems: [{ path, message: expect.stringMatching(message) }] });
  });

  it("all problems of one file at once", async () => {
    const file = job("bowler: { speedMph: 0, axisRotationDeg: 200 }\nseed: -1\nwho: me");
    const { error } = errorDocumentSchema.parse(JSON.parse((await inProcess("plan", file, "--json")).stdout));
    expect(error.problems.map(({ path }) => path).toSorted()).toEqual(["bowler.axisRotationDeg", "bowler.speedMph", "seed", "who"]);
  });
});

describe("a command line that cannot be", () => {
  it.each([
    ["no command", [], /plan, shot/],
    ["another command", ["dance"], /"dance" is not a command/],
    ["no file", ["plan"], /wants a file/],
    ["two files", ["plan", "a.yaml", "b.yaml"], /one too many/],
    ["an unknown option", ["plan", "a.yaml", "--fast"], /--fast/],
    ["a seed that is none", ["plan", "a.yaml", "--seed", "x"], /--seed wants a whole number/],
    ["no workers", ["plan", "a.yaml", "--workers", "0"], /--workers wants a whole number/],
    ["places off the lane", ["shot", "a.yaml", "--at", "15,99"], /--at wants distances/],
    ["an option without its value", ["plan", "a.yaml", "--svg"], /--svg/],
  ])("%s", async (_, args, message) => {
    const text = await inProcess(...args);
    expect(text).toMatchObject({ code: 2, stdout: "", stderr: expect.stringMatching(message) });
    const json = await inProcess(...args, "--json");
    expect(json.code).toBe(2);
    expect(errorDocumentSchema.parse(JSON.parse(json.stdout)).error.code).toBe("usage");
  });
});

describe("the built program", () => {
  it.each(CASES)("%s: exit 2, no stack trace", async (_, given, code, __, message) => {
    const file = given();
    const [asText, asJson] = await Promise.all([built("plan", file), built("plan", file, "--json")]);
    expect(asText).toMatchObject({ code: 2, stdout: "", stderr: expect.stringMatching(message) });
    expect(asText.stderr).not.toMatch(/^\s+at .*:\d+:\d+/m);
    expect(asJson.code).toBe(2);
    expect(errorDocumentSchema.parse(JSON.parse(asJson.stdout)).error.code).toBe(code);
  });

  it("says so when the chart cannot be written, without a stack trace", async () => {
    const { code, stderr } = await built("shot", join(EXAMPLES, "one-shot.yaml"), "--svg", join(tmpdir(), "gritwright-none", "lane.svg"));
    expect(code).toBe(2);
    expect(stderr).toMatch(/cannot be written/);
    expect(stderr).not.toMatch(/^\s+at /m);
  });
});
