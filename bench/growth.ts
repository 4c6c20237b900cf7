/**
 * `npm run bench-growth`: how cost grows, as log–log plots in docs/pictures; memory peaks of each command; the full model against a general solver. Processor
 * seconds throughout. Some five minutes.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { correctFileSchema, resolveCorrection } from "#contract/correctFile";
import { checkFile } from "#contract/job/checkJob";
import type { Point } from "#drawing/svg";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { correct } from "#engine/learning/house/correct";
import { averagedBall } from "#engine/motion/ground";
import { scoredShots, shotKernel } from "#engine/motion/manyShots";
import { MOST_SHOTS } from "#engine/motion/shotKernel";
import { scoreWorlds, wantedOf } from "#engine/planning/steps";
import { ensemble } from "#engine/worlds/ensemble";
import { readJobText } from "#exchange/jobFileText";
import { runBag } from "#tasks/bagTask";
import { inlineExecutor } from "#tasks/inlineExecutor";
import { bringVectorKernel } from "#tasks/kernel/vectorKernel";
import { fill } from "../test/records/manyThings.ts";
import { testShop } from "../test/records/shop.ts";
import { MACHINE, writeSection } from "../tools/performancePage.ts";
import { ROOT } from "../tools/setup.mjs";
import { BAG_QUESTION } from "./bag.ts";
import { logLogChart, type Series } from "./logLogChart.ts";
import { peaks } from "./peaks.ts";
import { PLAN_QUESTION } from "./plan.ts";
import { processorSecondsOf, processorSecondsOfLong } from "./processor.ts";
import { timesFewer, workPrecision } from "./workPrecision.ts";

const PICTURES = join(ROOT, "docs", "pictures");
bringVectorKernel();

/** What is counted, with what a count of it costs. */
async function grown(name: string, counts: readonly number[], cost: (count: number) => number | Promise<number>): Promise<Series> {
  await cost(counts[0]);
  const points: Point[] = [];
  for (const count of counts) points.push([count, await cost(count)]);
  console.log(`${name}: ${points.map(([count, seconds]) => `${count} in ${seconds.toPrecision(3)} s`).join(", ")}`);
  return { name, points };
}

/** x, vx, vy, ux, uy at the foul line: a matched bowler's shot, straight down the middle. */
const STARTS = [0, 0.2, 7.8, 3, -2];

function shots(count: number): number {
  const kernel = shotKernel();
  kernel.grip.fill(1.5);
  const constants = scoredShots(averagedBall({ ...TYPICAL_BALL, cover: "hybrid" }, 0.003));
  return processorSecondsOf(() => {
    for (let done = 0; done < count; done += 1000) {
      for (const [number, value] of STARTS.entries()) kernel.shots.fill(value, number * MOST_SHOTS, number * MOST_SHOTS + 1000);
      kernel.run(1000, constants);
    }
  });
}

function plan(finishes: number, worlds: number): number {
  const wanted = wantedOf(PLAN_QUESTION);
  return processorSecondsOf(() =>
    scoreWorlds(PLAN_QUESTION, { ...wanted, finishes: wanted.finishes.slice(0, finishes) }, "session", 0, worlds),
  );
}

const BAGS = [
  [1, 4],
  [2, 8],
  [4, 8],
  [8, 12],
] as const;

function bag([balls, stages]: readonly [number, number]): Promise<number> {
  const question = { ...BAG_QUESTION, balls: BAG_QUESTION.balls.slice(0, balls), session: { ...BAG_QUESTION.session, games: stages / 4 } };
  return processorSecondsOfLong(() => runBag(question, { executor: inlineExecutor }));
}

function notes(times: number): number {
  const file = checkFile(correctFileSchema, readJobText(readFileSync(join(ROOT, "examples", "correct.yaml"))));
  const seen = Array.from({ length: times }, () => file.shots).flat();
  const { question } = resolveCorrection({ ...file, shots: seen });
  return processorSecondsOf(() => correct(question));
}

const FOUND = 300;
/** A search by a serial number among so many balls, five tickets each. */
async function records(balls: number): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-growth-"));
  const shop = await testShop({ folder });
  const { shopId } = await shop.records.settings.get();
  await shop.records.close();
  const { serials } = fill(join(folder, "live", "records.sqlite"), shopId, shop.by, { balls, tickets: 5 * balls }, 1);
  const opened = await shop.reopen();
  const seconds = await processorSecondsOfLong(async () => {
    for (let i = 0; i < FOUND; i++) await opened.search.find(serials[(i * 7919) % serials.length]);
  });
  await opened.close();
  rmSync(folder, { recursive: true });
  return seconds / FOUND;
}

const SHOTS_OF_FILE = checkFile(correctFileSchema, readJobText(readFileSync(join(ROOT, "examples", "correct.yaml")))).shots.length;
const series = [
  await grown("shots that are scored", [1000, 10_000, 100_000, 1_000_000], shots),
  await grown("finishes of a plan, 4 worlds", [1, 2, 4, 7], (count) => plan(count, 4)),
  await grown("worlds of a plan, 7 finishes", [4, 16, 64, ensemble().worlds.length], (count) => plan(7, count)),
  await grown(
    "balls × stages of a bag",
    BAGS.map(([balls, stages]) => balls * stages),
    (count) => bag(BAGS.find(([balls, stages]) => balls * stages === count) ?? BAGS[0]),
  ),
  await grown(
    "notes of a house",
    [1, 2, 4, 8].map((times) => times * SHOTS_OF_FILE),
    (count) => notes(count / SHOTS_OF_FILE),
  ),
  await grown("balls on record, a search", [1000, 10_000, 100_000], records),
];
writeFileSync(
  join(PICTURES, "growth.svg"),
  `${logLogChart({
    id: "growth",
    title: "How cost grows",
    description: `Processor seconds against how many: ${series.map(({ name }) => name).join(", ")}.`,
    across: "how many",
    up: "processor seconds",
    series,
  })}\n`,
);

const { ours, general } = workPrecision();
const points = (all: typeof ours): Point[] => all.map(({ boards, seconds }) => [seconds, boards]);
writeFileSync(
  join(PICTURES, "work-precision.svg"),
  `${logLogChart({
    id: "work-precision",
    title: "The full model: error against work",
    description:
      "Error of a shot at the pins against processor seconds for one shot: the full model in steps of 4 to half a millisecond, and a general solver of high order at tolerances from 1e-3 to 1e-10.",
    across: "processor seconds a shot",
    up: "error, boards",
    series: [
      { name: "the full model", points: points(ours) },
      { name: "a general solver", points: points(general) },
    ],
  })}\n`,
);
const fewer = ours.map((one) => timesFewer(one, general)).filter((times) => times !== null);

/** The exponent between the first and the last point. */
function slope({ points: [first, ...rest] }: Series): string {
  const last = rest[rest.length - 1];
  return (Math.log(last[1] / first[1]) / Math.log(last[0] / first[0])).toFixed(2);
}

writeSection(
  "Growth",
  `Written by \`npm run bench-growth\` on ${MACHINE}: processor seconds, on a machine that others used too. A slope of 1 is in proportion.

![Processor seconds against how many, both logarithmic](pictures/growth.svg)

| what | from | to | slope |
|---|---:|---:|---:|
${series.map((one) => `| ${one.name} | ${told(one.points[0])} | ${told(one.points[one.points.length - 1])} | ${slope(one)} |`).join("\n")}

The full model against a general solver of high order (extrapolation, npm \`odex\`, the one that the tests hold it against), the same shot of a tumbling ball on an oiled lane, each against a look with a tolerance of 1e-12:

![Error in boards against processor seconds a shot](pictures/work-precision.svg)

| | error, boards | ms a shot |
|---|---:|---:|
${[
  ...ours.map(
    ({ boards, seconds }, i) =>
      `| the full model, steps of ${[4, 2, 1, 0.5][i]} ms | ${boards.toExponential(1)} | ${(1000 * seconds).toFixed(2)} |`,
  ),
  ...general.map(
    ({ boards, seconds }, i) => `| the solver, tolerance 1e-${i + 3} | ${boards.toExponential(1)} | ${(1000 * seconds).toFixed(2)} |`,
  ),
].join("\n")}

For the same error (between its points in the logarithms) the solver takes ${fewer.map((times) => times.toFixed(1)).join(", ")} times as many seconds as the model in those steps, the longest first.`,
);
writeSection(
  "Memory",
  `Written by \`npm run bench-growth\` on ${MACHINE}: the most that a command held at one time over its example, and its processor seconds from start to end.

| command | peak, MB | processor, s |
|---|---:|---:|
${(await peaks()).map(({ command, megabytes, seconds }) => `| \`${command}\` | ${Math.round(megabytes)} | ${seconds.toFixed(2)} |`).join("\n")}

The server over an hour of load: [many counters](#many-counters-sqlite).`,
);

function told([count, seconds]: Point): string {
  return `${count.toLocaleString("en")}: ${seconds < 0.1 ? `${Number((1000 * seconds).toPrecision(2))} ms` : `${seconds.toFixed(1)} s`}`;
}
