import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { gzipSync } from "node:zlib";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { USUAL } from "#server/config/configSchema";
import { NoUpdate } from "#server/program/inspect";
import { serveOnTrial } from "#server/program/onTrial";
import { type ProgramState, readState, stateOf } from "#server/program/state";
import { update } from "#server/program/update";
import { refusal } from "../records/shop.ts";
import { builtPackage, damaged, laidOut, layOut, strangePackage } from "./packages.ts";

const own = mkdtempSync(join(tmpdir(), "gritwright-update-"));
const [users, programs] = [join(own, "gritwright"), join(own, "gritwright", "programs")];
const installed = join(own, "installed");
const file = (name: string) => join(own, `${name}.tgz`);

/** Programs that say their version, and do something else than serve. */
const SAYS = (version: string, serves: string) => `if (process.argv.includes("--version")) console.log("${version}"); else { ${serves} }`;
const NEVER_LISTENS = "setInterval(() => {}, 1000)";
/** Well on a copy, and with no server on the shop itself. */
const SICK_ON_THE_SHOP = `if (process.argv[2] === "serve" && !process.argv.join().includes("rehearsal")) process.exit(1);\n`;

const said: string[] = [];
const bring = (path: string, mostMs = 60_000) =>
  update(path, {
    folder: programs,
    root: installed,
    config: { ...USUAL, shop: "own", data: users },
    shop: { now: Date.now, randomBytes, programVersion: "0.1.0", say: () => {} },
    install: laidOut,
    restart: null,
    say: (words) => said.push(words),
    mostMs,
  });

let running: ChildProcess | null = null;
afterEach(() => running?.kill("SIGKILL"));

/** Starts what is installed, as a service would. @returns address, and what it said */
async function start(): Promise<string> {
  const args = [join(installed, "dist", "cli", "main.js"), "serve", "--own", "--no-open", "--port", "0"];
  const child = spawn(process.execPath, args, {
    env: { ...process.env, XDG_DATA_HOME: own },
    stdio: ["ignore", "pipe", "inherit"],
    cwd: own,
  });
  running = child;
  for await (const bytes of child.stdout) {
    const found = /http:\/\/[\d.]+:\d+/.exec(String(bytes));
    if (found !== null) return found[0];
  }
  throw new Error("it ended before it listened");
}

async function stop(): Promise<number | null> {
  const child = running;
  const ended = new Promise<number | null>((resolve) => child?.on("exit", (code) => resolve(code)));
  child?.kill("SIGTERM");
  return ended;
}

async function tells(address: string): Promise<[string, string[]]> {
  const { version } = (await (await fetch(`${address}/api/health`)).json()) as { version: string };
  const { items } = (await (await fetch(`${address}/api/houses`)).json()) as { items: { name: string }[] };
  return [version, items.map(({ name }) => name)];
}

async function ended(version: string): Promise<ProgramState> {
  for (;;) {
    const state = readState(programs, installed);
    if (state?.last?.version === version) return state;
    await sleep(100);
  }
}

beforeAll(() => {
  builtPackage(file("0.1.0"), "0.1.0");
  layOut(file("0.1.0"), installed);
  builtPackage(file("0.1.1"), "0.1.1");
});
afterAll(() => rmSync(own, { recursive: true, force: true }));

describe("a file that cannot be used changes nothing", () => {
  test.each([
    ["changed in the middle", () => damaged(file("0.1.1"), file("changed"), "changed"), /is damaged/],
    ["cut short", () => damaged(file("0.1.1"), file("cut"), "cut"), /not fetched to its end/],
    ["not there", () => file("none"), /cannot be read \(ENOENT\)/],
    ["of another program", () => strangePackage(file("other"), "1.0.0", "x", { name: "other" }), /no package of Gritwright/],
    ["no package at all", () => write("text", gzipSync("hello")), /no package of Gritwright/],
    [
      "for a newer Node",
      () => strangePackage(file("newer"), "1.0.0", "x", { engines: { node: ">=99.1" } }),
      /wants Node 99\.1 or newer; this is/,
    ],
    [
      "that does not start",
      () => strangePackage(file("broken"), "0.9.0", "throw new Error('no such luck')"),
      /does not start[\s\S]*no such luck/,
    ],
    ["of another version than it says", () => strangePackage(file("liar"), "0.9.1", SAYS("0.9.2", "")), /does not start/],
  ])("%s", async (_, path, message) => {
    const fault = await refusal<NoUpdate>(bring(path()));
    expect(fault).toBeInstanceOf(NoUpdate);
    expect(fault.message).toMatch(message);
    expect(fault.message).toContain("Nothing has changed");
    expect(readState(programs, installed)).toBeNull();
    expect(existsSync(programs) ? readdirSync(programs) : []).toEqual([]);
  });
});

function write(name: string, bytes: Buffer): string {
  writeFileSync(file(name), bytes);
  return file(name);
}

describe("a shop that is brought up to date", () => {
  test("goes on with the new version, and with the old one where the new one is not well", { timeout: 180_000 }, async () => {
    const first = await start();
    const body = JSON.stringify({ name: "Old Lanes" });
    await fetch(`${first}/api/houses`, { method: "POST", headers: { "content-type": "application/json" }, body });
    expect(await tells(first)).toEqual(["0.1.0", ["Old Lanes"]]);

    // One that never listens is seen on the copy; the shop goes on meanwhile.
    strangePackage(file("mute"), "0.8.0", SAYS("0.8.0", NEVER_LISTENS));
    const mute = await refusal<NoUpdate>(bring(file("mute"), 2000));
    expect([mute.isSick, mute.message]).toEqual([true, expect.stringMatching(/tried on a copy of the shop, was not well within 2 s/)]);
    expect(readState(programs, installed)).toBeNull();
    expect(await tells(first)).toEqual(["0.1.0", ["Old Lanes"]]);

    await bring(file("0.1.1"));
    expect(said.join("\n")).toMatch(/sha256 [0-9a-f]{64}[\s\S]*Backup made: [\s\S]*Tried on a copy of the shop: it serves well/);
    expect(existsSync(join(programs, "rehearsal"))).toBe(false);
    expect(await stop()).toBe(0);

    // Killed while it is tried: the next start tries again.
    const orphan = await start();
    running?.kill("SIGKILL");
    await expect
      .poll(
        () =>
          fetch(orphan).then(
            () => "answers",
            () => "gone",
          ),
        { timeout: 20_000 },
      )
      .toBe("gone");
    expect(await tells(await start())).toEqual(["0.1.1", ["Old Lanes"]]);
    expect((await ended("0.1.1")).last).toEqual({ version: "0.1.1", isWell: true, why: "" });
    expect(await stop()).toBe(0);
    expect((await tells(await start()))[0]).toBe("0.1.1");

    const main = readFileSync(join(installed, "dist", "cli", "main.js"), "utf8").replace(/^#!.*\n/, "");
    builtPackage(file("0.1.2"), "0.1.2", { "dist/cli/main.js": SICK_ON_THE_SHOP + main });
    await bring(file("0.1.2"));
    expect(await stop()).toBe(0);
    expect(await tells(await start())).toEqual(["0.1.1", ["Old Lanes"]]);
    expect((await ended("0.1.2")).last).toEqual({ version: "0.1.2", isWell: false, why: "ended by itself with 1" });
    expect(await stop()).toBe(0);
  });

  test("one that hangs on the shop itself is stopped in time", async () => {
    const root = layOut(strangePackage(file("hangs"), "0.7.0", NEVER_LISTENS), join(own, "hangs"));
    const program = { version: "0.7.0", root };
    const state: ProgramState = { ...stateOf(programs, installed), trial: program };
    const code = await serveOnTrial({ folder: programs, state, program, args: ["serve"], say: () => {}, mostMs: 1500 });
    expect(code).toBeNull();
    expect(readState(programs, installed)).toMatchObject({ trial: null, current: { version: "0.1.1" }, last: { isWell: false } });
  });

  test("a program that is installed anew speaks for itself again", () => {
    writeFileSync(join(installed, "package.json"), readFileSync(join(installed, "package.json")));
    expect(readState(programs, installed)).toBeNull();
  });
});
