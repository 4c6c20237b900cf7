/**
 * Draws the pictures of the documentation from real plans of the examples, and of the page as it stands.
 *
 *   npx tsx --conditions=source tools/pictures.ts
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { planChart } from "#cli/planChart";
import { checkJob } from "#contract/job/checkJob";
import { resolvePlan } from "#contract/resolve/question";
import { laneChart } from "#drawing/laneChart";
import { plateauBar } from "#drawing/plateauBar";
import { parseFinish } from "#engine/surface/finish";
import { readJobText } from "#exchange/jobFileText";
import { inlineExecutor } from "#tasks/inlineExecutor";
import type { FinishLoss } from "#tasks/losses";
import { runPlan } from "#tasks/planTask";

const ROOT = join(import.meta.dirname, "..");
const FOLDER = join(ROOT, "docs", "pictures");
const EXAMPLES = ["league-night", "heavy-night"];

mkdirSync(FOLDER, { recursive: true });
for (const name of EXAMPLES) {
  const { question } = resolvePlan(checkJob(readJobText(readFileSync(join(ROOT, "examples", `${name}.yaml`)))));
  let losses: readonly FinishLoss[] = [];
  const plan = await runPlan(question, {
    executor: inlineExecutor,
    onProgress: (progress) => {
      losses = progress.losses;
    },
  });
  write(`${name}.svg`, laneChart(planChart(question, plan)));
  const steps = losses.map((loss) => ({ finish: parseFinish(loss.finish), lossPer100: loss.lossPer100 }));
  const { finish: pick, plateau, cliff } = plan.pick ?? { finish: null, plateau: [], cliff: null };
  write(`${name}-cost.svg`, plateauBar({ steps, pick, plateau, cliff }));
}

function write(name: string, svg: string): void {
  writeFileSync(join(FOLDER, name), `${svg}\n`);
  console.log(`docs/pictures/${name}`);
}
