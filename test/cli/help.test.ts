import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { COMMANDS, type CommandSaid, OTHERS } from "#cli/commandTable";
import { parseLine } from "#cli/parseLine";
import { built, builtWith, EXAMPLES, fileWith, inProcess } from "./commandLine.ts";

const OWN = Object.entries(COMMANDS) as [keyof typeof COMMANDS, CommandSaid][];

describe("a command's own help", () => {
  it.each(OWN)("%s: says what it does, each option, and examples that it takes", async (name, { says, takes, examples }) => {
    const { code, stdout, stderr } = await inProcess(name, "--help");
    expect([code, stderr]).toEqual([0, ""]);
    expect(stdout.toLowerCase().replace(/\s+/g, " ")).toContain(says.toLowerCase());
    for (const option of ["json", ...takes]) expect(stdout).toContain(`--${option}`);
    for (const example of examples) {
      expect(stdout).toContain(`  gritwright ${name} ${example}`);
      const words = [...example.replace(/ [<>].*$/, "").matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, word]) => quoted ?? word);
      expect(
        parseLine(name, words, () => {}),
        example,
      ).not.toBeNull();
    }
  });

  it.each(Object.keys(OTHERS))("%s", async (name) => {
    const { code, stdout } = await inProcess(name, "-h");
    expect(code).toBe(0);
    expect(stdout).toContain(`Usage: gritwright ${name}`);
    for (const option of OTHERS[name as keyof typeof OTHERS].options) expect(stdout).toContain(option);
  });

  it("is looked for in the help of all, which names every command", async () => {
    const { stdout } = await inProcess("--help");
    for (const name of [...Object.keys(COMMANDS), ...Object.keys(OTHERS)]) expect(stdout).toContain(`  gritwright ${name} `);
    expect(stdout).toContain("gritwright COMMAND --help");
  });

  // no-color.org: with NO_COLOR set, nothing is coloured; nothing of ours is at any time.
  it("has no colours, whatever the terminal is said to take", () => {
    for (const env of [{ NO_COLOR: "1" }, { FORCE_COLOR: "3", CLICOLOR_FORCE: "1" }])
      for (const args of [["--help"], ["plan", "--help"], ["plam"], ["stages", join(EXAMPLES, "bench-batch.yaml")]]) {
        const { stdout, stderr } = spawnSync(process.execPath, [join(EXAMPLES, "../dist/cli/main.js"), ...args], {
          env: { ...process.env, ...env },
        });
        expect(`${stdout}${stderr}`).not.toContain("\u001b[");
      }
  });
});

describe("did you mean", () => {
  it.each([
    [["plam", "x"], /"plam" is not a command\. Did you mean plan\?/],
    [["serv"], /Did you mean serve\?/],
    [["plan", "x", "--sed", "3"], /--sed.*Did you mean --seed\?/],
    [["limits", "x", "--bok=usbc"], /Did you mean --book\?/],
    [["stages", "x", "--svg", "y"], /stages does not take --svg/],
    [["serve", "--onw"], /Did you mean --own\?/],
  ])("%j", async (args, said) => {
    const { code, stdout, stderr } = await built(...args);
    expect([code, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(said);
  });

  it("is not said where nothing is near", async () => {
    expect((await inProcess("dance")).stderr).not.toContain("Did you mean");
  });

  it("an option is no other option's value", async () => {
    expect((await inProcess("plan", "x", "--svg", "--json")).code).toBe(2);
    expect((await inProcess("plan", "x", "--seed", "-4")).stderr).toContain("a negative number is not allowed");
  });
});

describe("- is standard input, and for a picture standard output", () => {
  it.each([
    ["stages", "bench-batch.yaml"],
    ["fade", "fade.yaml"],
    ["profile", "profile-1000-pad.csv"],
    ["padwork", "pad-work.yaml"],
  ])("%s says of what comes in what it says of the file", async (name, example) => {
    const file = join(EXAMPLES, example);
    const [asFile, asInput] = [await built(name, file, "--json"), await builtWith(readFileSync(file, "utf8"), name, "-", "--json")];
    expect(asInput.code).toBe(0);
    expect(JSON.stringify(JSON.parse(asInput.stdout)).replaceAll('"file":"-"', `"file":"${example}"`)).toBe(
      JSON.stringify(JSON.parse(asFile.stdout)),
    );
  });

  it("the picture stands alone, and the text beside it", async () => {
    const { code, stdout, stderr } = await built("fade", join(EXAMPLES, "fade.yaml"), "--svg", "-");
    expect(code).toBe(0);
    expect(stdout).toMatch(/^<svg[\s\S]*<\/svg>\s*$/);
    expect(stderr).toBe((await built("fade", join(EXAMPLES, "fade.yaml"))).stdout);
    expect((await built("fade", join(EXAMPLES, "fade.yaml"), "--svg", "-", "--json")).code).toBe(2);
  });

  it("nothing, too much, and twice the same are refused", async () => {
    expect((await builtWith("", "plan", "-")).stderr).toMatch(/nothing in the file/);
    expect((await builtWith("x".repeat(3_000_000), "plan", "-")).code).toBe(2);
    expect((await builtWith("x", "trial", "-", "-")).stderr).toMatch(/read once/);
  });
});

describe("completion", () => {
  const script = (shell: string) =>
    fileWith(spawnSync(process.execPath, [join(EXAMPLES, "../dist/cli/main.js"), "completion", shell]).stdout, `c.${shell}`);
  const has = (shell: string) => spawnSync(shell, ["--version"]).status === 0;
  const asked = (shell: string, code: string) =>
    spawnSync(shell, [...(shell === "zsh" ? ["-f"] : []), "-c", code], { encoding: "utf8" })
      .stdout.trim()
      .split(/\s+/);

  it("names every command for every shell, and refuses another shell", async () => {
    for (const shell of ["bash", "zsh", "fish"])
      for (const name of [...Object.keys(COMMANDS), ...Object.keys(OTHERS)]) expect(readFileSync(script(shell), "utf8")).toContain(name);
    expect((await inProcess("completion", "tcsh")).code).toBe(2);
  });

  it.runIf(has("bash"))("bash completes commands, a command's options, and the few words of an option", () => {
    const ask = (...words: string[]) =>
      asked(
        "bash",
        `source ${script("bash")}; COMP_WORDS=(gritwright ${words.join(" ")}); COMP_CWORD=${words.length}; _gritwright; echo "\${COMPREPLY[@]}"`,
      );
    expect(ask("pl")).toEqual(["plan"]);
    expect(ask("plan", "--s")).toEqual(["--svg", "--seed"]);
    expect(ask("limits", "--book", '""')).toEqual(["usbc", "world-bowling"]);
    expect(ask("completion", "f")).toEqual(["fish"]);
  });

  it.runIf(has("zsh"))("zsh does", () => {
    const own = 'compdef() { }; compadd() { shift; print -- "$@" }; _describe() { print -l -- $commands }; _files() { print FILES }';
    const ask = (...words: string[]) =>
      asked("zsh", `${own}; source ${script("zsh")}; words=(gritwright ${words.join(" ")}); CURRENT=${words.length + 1}; _gritwright`);
    expect(ask("limits", "--book", '""')).toEqual(["usbc", "world-bowling"]);
    expect(ask("plan", "--s")).toContain("--seed");
    expect(ask("plan", "x")).toEqual(["FILES"]);
  });

  it.runIf(has("fish"))("fish does", () => {
    const ask = (line: string) => asked("fish", `source ${script("fish")}; complete -C '${line}'`);
    expect(ask("gritwright pl")[0]).toBe("plan");
    expect(ask("gritwright limits --book ")).toEqual(["usbc", "world-bowling"]);
    expect(ask("gritwright plan --se")).toEqual(["--seed"]);
  });
});
