import type { CheckedJob } from "#contract/job/jobFile";
import { jobOfShot } from "#contract/job/writeJob";
import { JobFault } from "#contract/problem";
import { resolvePlan, resolveShot, type UnaimedShot } from "#contract/resolve/question";
import type { ShotDocument } from "#contract/shotDocument";
import { type LaneChartInput, laneChart } from "#drawing/laneChart";
import { assume } from "#engine/assumptions";
import type { Line } from "#engine/delivery/bowler";
import { filmFrom, toFilmSheet } from "#engine/lane/filmMap";
import type { FilmSheet } from "#engine/lane/filmSheet";
import type { Shot } from "#engine/motion/shot";
import { simulateShot } from "#engine/motion/simulate";
import { groundOf } from "#engine/planning/ground";
import { filmOf } from "#engine/planning/pictures";
import { filmFound, lineNow } from "#engine/planning/session";
import { type ShotBand, shotBand } from "#engine/planning/shotBand";
import { programVersion } from "#server/version";
import type { Options } from "./options.ts";
import { readJob } from "./readJob.ts";
import { shotText } from "./shotText.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

/** The arrows, the middle, the pattern's end, the pocket and the head pin. */
const USUAL_PLACES_FT = [15, 30, 45, 59.5, 60];

/** `gritwright shot FILE`: one shot of a job file, on the file's line, else on the best line of today's finish. */
export async function shot(file: string, options: Options, world: World): Promise<ExitCode> {
  const read = await readJob(file);
  const job = options.seed === null ? read : { ...read, seed: options.seed };
  const { question, defaults } = resolveShot(job, options.at ?? USUAL_PLACES_FT);
  const { assumptions, ...unaimed } = question;
  const line = question.line ?? bestLine(job, question);
  const found = simulateShot({ ...unaimed, line }, assume(assumptions), filmAsFound(job, question));
  const aimed: UnaimedShot = { ...question, line };
  const band = question.surface.kind === "lane" ? shotBand(resolvePlan(job).question, question.ball.finish, line) : null;
  if (options.svg !== null) await writePicture(options.svg, laneChart(shotChart(job, aimed, found)), world);
  const version = programVersion();
  world.print(
    options.json
      ? `${JSON.stringify(shotDocumentOf(found, band, aimed, defaults, version), null, 2)}\n`
      : shotText(found, band, aimed, defaults),
  );
  return 0;
}

/** Where shots have been played before this one, the lane is the one that a plan of the same job would find. */
function filmAsFound(job: CheckedJob, { surface }: UnaimedShot) {
  return surface.kind === "lane" && surface.lane.playedShots > 0 ? filmFound(groundOf(resolvePlan(job).question)) : null;
}

/** @throws {JobFault} if today's finish has no sensible line, so that one must be named */
function bestLine(job: CheckedJob, shotAsked: UnaimedShot): Line {
  const ground = groundOf(resolvePlan(job).question);
  const line = lineNow(ground, filmFound(ground));
  if (line !== null) return line;
  throw new JobFault("invalid", [
    { path: "line", value: shotAsked.line, allowed: "laydownBoard and launchAngleDeg", reason: { id: "noBestLine", params: {} } },
  ]);
}

/** The lane chart of one shot. */
export function shotChart(job: CheckedJob, asked: UnaimedShot, shot: Shot): LaneChartInput {
  return {
    film: asked.surface.kind === "lane" ? filmOf(resolvePlan(job).question) : bareLane(),
    hand: asked.bowler.hand,
    title: asked.ball.name,
    courses: [{ name: asked.bowler.name, finish: asked.ball.finish, course: shot.course, emphasis: "pick" }],
  };
}

/** Where friction is given outright there is no oil to draw. */
function bareLane(): FilmSheet {
  return toFilmSheet(filmFrom(0, () => 0));
}

/** A shot as data. */
export function shotDocumentOf(
  shot: Shot,
  band: ShotBand | null,
  asked: UnaimedShot,
  defaults: readonly string[],
  engineVersion: string,
): ShotDocument {
  const { samples, gutter, phases, flare, energy, reachedPins } = shot;
  return {
    gritwright: 1,
    kind: "shot",
    engineVersion,
    seed: asked.seed,
    inputs: jobOfShot(asked),
    defaults: [...defaults],
    samples: samples.map((sample) => ({ ...sample, velocityMps: [...sample.velocityMps], omegaRadps: [...sample.omegaRadps] })),
    gutter,
    phases,
    flare,
    energy,
    reachedPins,
    band,
  };
}
