import { readingsFileSchema } from "#contract/bench/readingsFile";
import { readingsBySide } from "#drawing/readingsBySide";
import { assume } from "#engine/assumptions";
import { ABRASIVES } from "#engine/surface/abrasives";
import { hardnessOf } from "#engine/surface/benchBall";
import { effectiveRaOfReadingUm, effectiveRaUm } from "#engine/surface/finish";
import { type EvennessVerdict, evenness } from "#engine/surface/readings/evenness";
import { USUAL_HABITS } from "#engine/surface/stages";
import { programVersion } from "#server/version";
import { READINGS } from "#words/en/measuring";
import { fixed } from "#words/figures";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { textTable } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

const USUAL_DIAMETER_IN = 8.594;

/** `gritwright readings FILE`: whether the sides agree and the finish is met, and which side to go back to. */
export async function readings(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, readingsFileSchema);
  const a = assume();
  const targetUm = effectiveRaUm(asked.wanted);
  const sides = asked.sides.map(({ side, raMicroinch }) => ({
    side,
    raUm: raMicroinch.map((reading) => effectiveRaOfReadingUm(reading, a)),
  }));
  const verdict = evenness(sides, targetUm, {
    grainUm: ABRASIVES[asked.lastPad].grainUm,
    force: "medium",
    by: "spinner",
    spinnerRpm: USUAL_HABITS.spinnerRpm,
    diameterIn: USUAL_DIAMETER_IN,
    hardnessD: hardnessOf({ hardnessD: asked.ball.hardnessD ?? null, cover: asked.ball.cover }),
    ownCut: 1,
  });
  if (options.svg !== null) await writePicture(options.svg, readingsBySide({ verdict, targetUm }), world);
  const document = { gritwright: 1, kind: "readings", engineVersion: programVersion(), targetUm, ...verdict };
  world.print(options.json ? `${JSON.stringify(document, null, 2)}\n` : `${report(verdict, targetUm).join("\n")}\n`);
  return 0;
}

function report(verdict: EvennessVerdict, targetUm: number): string[] {
  const worst = verdict.sides.find(({ side }) => side === verdict.backTo);
  const column = (heading: string, align: "left" | "right", cell: (side: EvennessVerdict["sides"][number]) => string) => ({
    heading: [heading, ""] as const,
    align,
    cells: verdict.sides.map(cell),
  });
  return [
    READINGS.verdict[verdict.verdict],
    READINGS.mean(verdict.mean, targetUm),
    READINGS.spread(verdict.betweenSides, verdict.betweenAtMost, verdict.withinSide),
    "",
    ...textTable([
      column(READINGS.columns.side, "left", ({ side }) => side),
      column(READINGS.columns.ra, "right", ({ mean }) => fixed(mean, 2)),
      column(READINGS.columns.range, "right", ({ low, high }) => `${fixed(low, 2)}–${fixed(high, 2)}`),
      column(READINGS.columns.stands, "left", ({ stands }) => READINGS.stands[stands]),
      column(READINGS.columns.more, "right", ({ moreSeconds }) => (moreSeconds === 0 ? "" : fixed(moreSeconds, 0))),
    ]),
    ...(worst ? ["", READINGS.backTo(worst.side, worst.moreSeconds)] : []),
  ];
}
