import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { WORLDS } from "#engine/planning/worldCounts";
import { ensemble } from "#engine/worlds/ensemble";
import { bringVectorKernel } from "#tasks/kernel/vectorKernel";
import { type Compared, comparedIn, pickOf, tiedOf } from "./bruteForce/compared.ts";
import { randomQuestion } from "./bruteForce/randomQuestion.ts";

/* `npm run plan-check -- 200`: how often a plan says what brute force says, all nodes and all worlds, into the page of the finish plan. Some ten seconds a question. */

const PAGE = join(import.meta.dirname, "..", "docs", "model", "finish-plan.md");
const MARK = "<!-- brute force -->\n";
/** Worlds in which every node is thrown: enough to see what the others leave out, at four times a plan's work. */
const NODES_IN = 4;
const FIRST_SEED = 1000;

bringVectorKernel();
const questions = Number(process.argv[2] ?? 200);
const found: Compared[] = [];
for (let i = 0; i < questions; i++) {
  found.push(comparedIn(randomQuestion(FIRST_SEED + i), WORLDS.final, ensemble().worlds.length, NODES_IN));
  process.stderr.write(`\r${i + 1} of ${questions}`);
}
process.stderr.write("\n");

const share = (holds: (one: Compared) => boolean) => `${found.filter(holds).length} of ${found.length}`;
const rms = (values: readonly number[]) => Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / values.length);
const nodes = found.flatMap(({ nodesOff }) => nodesOff).map((off) => 100 * Math.abs(off));
const shares = found.map(({ few, all }) => 100 * (few.share - all.share));
const table = [
  "| | |",
  "|---|---:|",
  `| the same pick in ${WORLDS.final} worlds as in all ${ensemble().worlds.length} | ${share(({ few, all }) => pickOf(few) === pickOf(all))} |`,
  `| the pick of all is among those that ${WORLDS.final} do not tell apart | ${share(({ few, all }) => tiedOf(few).includes(pickOf(all)))} |`,
  `| the same tied group | ${share(({ few, all }) => tiedOf(few).join() === tiedOf(all).join())} |`,
  `| share of the worlds that agree, difference, in 100: root mean square, worst | ${rms(shares).toFixed(1)}, ${Math.max(...shares.map(Math.abs)).toFixed(1)} |`,
  `| a finish in one world, every node thrown against those near the pins, strikes in 100: root mean square, worst | ${rms(nodes).toFixed(3)}, ${Math.max(...nodes).toFixed(3)} |`,
].join("\n");
console.log(table);
const [before, , after] = readFileSync(PAGE, "utf8").split(MARK);
writeFileSync(
  PAGE,
  `${before}${MARK}Written by \`npm run plan-check -- ${questions}\`: invented bowlers, balls and patterns drawn from a seed, three finishes beside one another.\n\n${table}\n${MARK}${after}`,
);
