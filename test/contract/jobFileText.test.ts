import { describe, expect, it } from "vitest";
import { JobFault, type JobFaultCode } from "#contract/problem";
import { MOST_BYTES, readJobText } from "#exchange/jobFileText";

const read = (text: string) => readJobText(new TextEncoder().encode(text));

function faultOf(bytes: Uint8Array | string): { code: JobFaultCode; reason: string; params: object } {
  try {
    readJobText(typeof bytes === "string" ? new TextEncoder().encode(bytes) : bytes);
  } catch (fault) {
    if (fault instanceof JobFault)
      return { code: fault.code, reason: fault.problems[0].reason.id, params: fault.problems[0].reason.params };
    throw fault;
  }
  throw new Error("it was read");
}

describe("text of a job file", () => {
  it("is YAML, or JSON, with or without a byte order mark", () => {
    expect(read("a: [1, two, 3.5e2]")).toEqual({ a: [1, "two", 350] });
    expect(read('\uFEFF{"a": [1, "two", 350]}')).toEqual({ a: [1, "two", 350] });
  });

  it("may use a few aliases", () => {
    expect(read("a: &it [1, 2]\nb: *it")).toEqual({ a: [1, 2], b: [1, 2] });
  });

  it.each([
    ["nothing", ""],
    ["only a comment", "# later\n"],
  ])("that says %s is empty", (_, text) => {
    expect(faultOf(text)).toMatchObject({ code: "unreadable", reason: "empty" });
  });

  it("is UTF-8", () => {
    expect(faultOf(new Uint8Array([0x61, 0xff, 0xfe]))).toMatchObject({ code: "unreadable", reason: "notUtf8" });
  });

  it("is no larger than it may be", () => {
    expect(faultOf(new Uint8Array(MOST_BYTES + 1).fill(0x61))).toMatchObject({ code: "unreadable", reason: "tooLarge" });
  });

  it("is told line and column of what is not YAML", () => {
    expect(faultOf("a: 1\nb: [1, 2\nc: }")).toMatchObject({ code: "syntax", reason: "syntax", params: { line: 3 } });
  });

  it("has each key once", () => {
    expect(faultOf("a: 1\nb: 2\na: 3")).toMatchObject({ code: "syntax", reason: "duplicateKey", params: { key: "a", line: 3 } });
    expect(faultOf('{"a": 1, "a": 1}')).toMatchObject({ reason: "duplicateKey" });
  });

  it("is one document without foreign tags", () => {
    expect(faultOf("a: 1\n---\nb: 2")).toMatchObject({ code: "syntax" });
    expect(faultOf("a: !!js/function 'x'")).toMatchObject({ code: "syntax" });
  });
});

describe("text made to use up memory or time", () => {
  const names = [..."abcdefghij"];
  const bomb = names
    .map(
      (name, i) =>
        `${name}: &${name} [${Array(10)
          .fill(i === 0 ? "1" : `*${names[i - 1]}`)
          .join(",")}]`,
    )
    .join("\n");

  it.each([
    ["aliases of aliases", bomb, "tooManyAliases"],
    ["an alias to its own parent", "&a [*a]", "tooDeep"],
    ["open brackets", "[".repeat(400_000), "tooDeep"],
    ["dashes in a row", "- ".repeat(400_000), "tooDeep"],
    ["dashes in a row below a key", `a:\n  ${"- ".repeat(400_000)}`, "tooDeep"],
    ["indents", Array.from({ length: 600 }, (_, i) => `${" ".repeat(i)}a:`).join("\n"), "tooDeep"],
    ["lists in lists", `${"[".repeat(40)}${"]".repeat(40)}`, "tooDeep"],
    ["nonsense, a hundred thousand times", "a: ".repeat(100_000), "syntax"],
  ])("%s: refused within seconds", { timeout: 20_000 }, (_, text, reason) => {
    expect(faultOf(text)).toMatchObject({ code: "syntax", reason });
  });
});
