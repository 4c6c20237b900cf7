import { type BenchFile, type BenchFileBall, benchBallOf, benchFileSchema } from "#contract/bench/benchFile";
import { fadeChart } from "#drawing/fadeChart";
import { assume } from "#engine/assumptions";
import { freshRoughness } from "#engine/surface/benchBall";
import { type Care, careOf, type Due, type Use } from "#engine/surface/care";
import { effectiveRaOfReadingUm } from "#engine/surface/finish";
import { programVersion } from "#server/version";
import { FADE } from "#words/en/fade";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

interface Fading {
  readonly name: string;
  readonly use: Use;
  readonly care: Care;
}

/** `gritwright fade FILE`: how each ball's finish fades, and what is due when. The picture is of the first ball. */
export async function fade(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, benchFileSchema);
  const fading = asked.balls.map((ball, i): Fading => {
    const use = useOf(ball, asked);
    return { name: ball.ball.name ?? `Ball ${i + 1}`, use, care: careOf(use) };
  });
  const [first] = fading;
  if (options.svg !== null)
    await writePicture(
      options.svg,
      fadeChart({ name: first.name, ...first.care, readings: first.use.readings, gamesNow: first.use.gamesSince }),
      world,
    );
  const document = { gritwright: 1, kind: "fade", engineVersion: programVersion(), balls: fading };
  world.print(
    options.json ? `${JSON.stringify(document, null, 2)}\n` : `${fading.map((ball) => reportOf(ball, asked).join("\n")).join("\n\n")}\n`,
  );
  return 0;
}

/** The readings of the file belong to its first ball's finish where there is one ball, else to none: a batch has no curve in common. */
function useOf(asked: BenchFileBall, { balls, use }: BenchFile): Use {
  const ball = benchBallOf(asked);
  const a = assume();
  const readings = balls.length === 1 ? (use?.readings ?? []) : [];
  return {
    cover: ball.cover,
    startUm: freshRoughness(ball, a),
    gamesSince: ball.gamesSince,
    gamesSinceExtraction: asked.ball.gamesSinceExtraction ?? ball.gamesSince,
    gamesSinceResurfacing: asked.ball.gamesSinceResurfacing ?? ball.gamesSince,
    abrasiveness: use?.abrasiveness ?? 1,
    readings: readings.map(({ games, raMicroinch }) => ({ games, raUm: effectiveRaOfReadingUm(raMicroinch, a), where: "track" as const })),
  };
}

function reportOf({ name, use, care }: Fading, file: BenchFile): string[] {
  const due = (what: string, when: Due) => `  ${what}: ${dueText(when, file)}`;
  return [
    name,
    `  ${FADE.nowIs(use.gamesSince, care.now.value, care.now.low, care.now.high)}`,
    `  ${FADE.readings(use.readings.length)}`,
    due(FADE.refresh, care.refresh),
    due(FADE.extraction, care.extraction),
    due(FADE.resurfacing, care.resurfacing),
  ];
}

function dueText({ value, low, high }: Due, { use }: BenchFile): string {
  if (value === null) return FADE.never;
  if (value === 0) return FADE.dueNow;
  return (
    FADE.inGames(value, low, high) + (use?.gamesPerWeek && use.from ? FADE.onDay(dayAfter(use.from, (7 * value) / use.gamesPerWeek)) : "")
  );
}

const DAY_MS = 86_400_000;

function dayAfter(from: string, days: number): string {
  return new Date(Date.parse(`${from}T12:00:00Z`) + Math.round(days) * DAY_MS).toISOString().slice(0, 10);
}
