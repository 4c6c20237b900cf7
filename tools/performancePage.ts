import { readFileSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { join } from "node:path";
import { ROOT } from "./setup.mjs";

const PAGE = join(ROOT, "docs", "performance.md");

/** What a figure was measured on, without the names of makers. */
export const MACHINE = `${cpus().length} cores, Node ${process.version}`;

/** Writes one section of docs/performance.md anew, and leaves the others. */
export function writeSection(title: string, text: string): void {
  const sections = readFileSync(PAGE, "utf8").split(/^(?=## )/m);
  const section = `## ${title}\n\n${text.trim()}\n`;
  const at = sections.findIndex((one) => one.startsWith(`## ${title}\n`));
  if (at === -1) sections.push(section);
  else sections[at] = section;
  writeFileSync(PAGE, `${sections.map((one) => one.trimEnd()).join("\n\n")}\n`);
}
