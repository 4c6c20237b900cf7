import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const CLI = join(import.meta.dirname, "../../dist/cli");

/** Files that are read with a built one before it begins: what it imports, and what that imports, of our own and by the name of packages. */
function readWith(file: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const [, name] of readFileSync(file, "utf8").matchAll(/^(?:import|export)[^;]*?from "([^"]+)";/gm)) {
    if (name.startsWith("node:")) continue;
    if (name.startsWith(".")) readWith(join(file, "..", name), seen);
    else if (name.startsWith("#")) readWith(join(CLI, "..", `${name.slice(1)}.js`), seen);
    else seen.add(name);
  }
  return seen;
}

it("what asks for help, the version or a command that is not there reads no command's files and no package", () => {
  const read = readWith(join(CLI, "runHere.js"), new Set(readWith(join(CLI, "main.js"))));
  const commands = [...readFileSync(join(CLI, "commandLine.js"), "utf8").matchAll(/import\("\.\/(\w+)\.js"\)/g)].map(([, name]) => name);
  expect(commands).toContain("plan");
  for (const command of commands) expect(readdirSync(CLI)).toContain(`${command}.js`);
  for (const command of commands) expect([...read]).not.toContain(join(CLI, `${command}.js`));
  expect([...read].filter((name) => !name.startsWith("/"))).toEqual([]);
  expect(read.size).toBeLessThan(15);
});
