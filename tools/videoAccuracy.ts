import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { median } from "#engine/video/robust";
import { accuracyOver, OUTCOME_WORDS, ROW_NAMES, rms, shareWithin, TRACKER, worst } from "./video/accuracy.ts";
import { NONE } from "./video/sightings.ts";

/* `npm run video-accuracy`: writes what the reading of sightings comes to into its page, from shots by which nothing was chosen. A minute or two. */

const PAGE = join(import.meta.dirname, "..", "docs", "model", "video.md");
const SHOTS = 400;
/** By the shots from 9000 and 20 000 on floors and priors were chosen; these are others. */
const KEPT_OUT_SEED = 50_000;

const exact = accuracyOver(100, KEPT_OUT_SEED + 1000, NONE);
const noisy = accuracyOver(SHOTS, KEPT_OUT_SEED, TRACKER);
const rows = OUTCOME_WORDS.map((id) => {
  const [without, seen] = [exact.by.get(id) ?? [], noisy.by.get(id) ?? []];
  const half = median(seen.map((one) => one.half));
  return `| ${ROW_NAMES[id]} | ${figure(rms(without))} | ${figure(rms(seen))} | ${figure(worst(seen))} | ${figure(half)} | ${Math.round(100 * shareWithin(seen))} | ${seen.length} |`;
});
const all = OUTCOME_WORDS.flatMap((id) => noisy.by.get(id) ?? []);
const table = [
  "| | RMS without noise | RMS | worst | median half interval | held, % | told |",
  "|---|---|---|---|---|---|---|",
  ...rows,
  "",
  `${noisy.read} of ${noisy.shots} shots were read; of all figures together the intervals held ${Math.round(100 * shareWithin(all))} %.`,
].join("\n");

const [before, rest] = readFileSync(PAGE, "utf8").split("<!-- accuracy -->\n");
const after = rest.split("<!-- /accuracy -->")[1];
writeFileSync(PAGE, `${before}<!-- accuracy -->\n${table}\n<!-- /accuracy -->${after}`);

function figure(value: number): string {
  return value < 0.1 ? value.toFixed(3) : value < 10 ? value.toFixed(2) : value.toFixed(0);
}
