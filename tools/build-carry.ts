/**
 * Builds the carry table: `npm run build:carry [-- --runs 48000 --calibration 32000 --processes 2 --folder .cache/carry]`.
 * Hours on two cores; cut at any time it goes on where it was. Writes src/engine/pins/carryData.ts and docs/model/carry-fit.md.
 */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { parseArgs } from "node:util";
import { packTable } from "#engine/pins/packing";
import { type Description, designOf } from "./carry/design.ts";
import { fitTo, tableMembers } from "./carry/fitStore.ts";
import { fitPage } from "./carry/page.ts";
import { runDesign } from "./carry/runDesign.ts";
import { engineVersion, loadEngine } from "./carry/scene.ts";
import { tabulate } from "./carry/tabulate.ts";

const MEMBERS = 40;
const MEMBERS_FILE = "tools/carry/members.json";
const DATA = "src/engine/pins/carryData.ts";

const { values } = parseArgs({
  options: {
    runs: { type: "string", default: "48000" },
    calibration: { type: "string", default: "32000" },
    processes: { type: "string", default: String(availableParallelism()) },
    folder: { type: "string", default: ".cache/carry" },
  },
});
const wholeNumber = (name: "runs" | "calibration" | "processes"): number => {
  const number = Number(values[name]);
  if (Number.isInteger(number) && number > 0) return number;
  throw new Error(`--${name} ${values[name]}: a whole number above 0 is allowed.`);
};
const processes = wholeNumber("processes");

const calibration: Description = { kind: "calibration", count: wholeNumber("calibration") };
const fit = fitTo(designOf(calibration), await runDesign(calibration, values.folder, processes), values.folder);
const { members, digest } = tableMembers(fit, MEMBERS);
const description: Description = { kind: "table", count: wholeNumber("runs"), members, membersDigest: digest };
const design = designOf(description);
const table = tabulate(design, await runDesign(description, values.folder, processes), fit.networks, fit.candidates);

await loadEngine();
const packed = packTable(table);
const provenance = {
  engine: `@dimforge/rapier3d-simd-compat ${engineVersion()}`,
  design: design.name,
  runs: design.count,
  calibrationRuns: calibration.count,
  made: new Date().toISOString().slice(0, 10),
};
writeFileSync(
  DATA,
  `// Made by \`npm run build:carry\`; not edited by hand. docs/model/carry.md says how, docs/model/carry-fit.md what came out.
import type { Provenance } from "./carryGrid.ts";
import type { PackedTable } from "./packing.ts";

export const CARRY: { readonly provenance: Provenance; readonly packed: PackedTable } = ${JSON.stringify({ provenance, packed }, null, 2)};
`,
);
writeFileSync(MEMBERS_FILE, `${JSON.stringify(members, null, 1)}\n`);
writeFileSync("docs/model/carry-fit.md", fitPage({ fit, table, provenance, members }));
// Laid out as every other file, so that a new table is a small difference.
execFileSync("npx", ["biome", "format", "--write", DATA, MEMBERS_FILE], { stdio: "ignore", shell: process.platform === "win32" });
console.log(`The table holds ${packed.base64.length} characters and ${packed.leaves.length} leaves.`);
