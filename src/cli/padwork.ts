import { type PadWorkFile, padQuestionOf, padWorkFileSchema, takenAsUsual } from "#contract/bench/padWorkFile";
import { ballGlobe } from "#drawing/ballGlobe";
import type { CautionId } from "#engine/rules/cautions";
import { ABRASIVES } from "#engine/surface/abrasives";
import { DEPTH_RANGE, type PadWork, padWorkOf } from "#engine/surface/padWork/padWork";
import { SIDE_AXES } from "#engine/surface/padWork/sides";
import { programVersion } from "#server/version";
import type { Options } from "./options.ts";
import { padworkText } from "./padworkText.ts";
import { readChecked } from "./readJob.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** `gritwright padwork FILE`: how evenly a stage or several work a ball. */
export async function padwork(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, padWorkFileSchema);
  const question = padQuestionOf(options.seed === null ? asked : { ...asked, seed: options.seed });
  const done = padWorkOf(question);
  const name = asked.ball?.name ?? null;
  if (options.svg !== null) await writePicture(options.svg, ballGlobe({ name, work: done, axes: SIDE_AXES }), world);
  world.print(
    options.json
      ? `${JSON.stringify(documentOf(name, asked, done, question.seed), null, 2)}\n`
      : padworkText(name, done, takenAsUsual(asked), cautionsOf(asked)),
  );
  return 0;
}

/** Everything but the cells themselves, which the picture shows. */
function documentOf(name: string | null, asked: PadWorkFile, { cells, received: _cellByCell, ...said }: PadWork, seed: number) {
  return {
    gritwright: 1,
    kind: "padwork",
    engineVersion: programVersion(),
    name,
    cells: cells.count,
    seed,
    takenAsUsual: takenAsUsual(asked),
    cautions: cautionsOf(asked),
    ...said,
    depthRange: DEPTH_RANGE,
  };
}

/** The hazards of the work asked about: dust of any, the turning ball where there is a spinner, water where there is wet paper. */
function cautionsOf({ stages }: PadWorkFile): readonly CautionId[] {
  return [
    ...(stages.some(({ by }) => by !== "hand") ? (["spinner"] as const) : []),
    ...(stages.some(({ abrasive }) => ABRASIVES[abrasive].kind === "wetPaper") ? (["water", "wetPaper"] as const) : []),
    "dust",
  ];
}
