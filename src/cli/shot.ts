import type { CheckedJob } from "#contract/job/jobFile";
import { JobFault } from "#contract/problem";
import { resolvePlan, resolveShot, type UnaimedShot } from "#contract/resolve/question";
import { laneChart } from "#drawing/laneChart";
import { assume } from "#engine/assumptions";
import type { Line } from "#engine/delivery/bowler";
import { simulateShot } from "#engine/motion/simulate";
import { groundOf } from "#engine/planning/ground";
import { filmFound, lineNow } from "#engine/planning/session";
import { shotBand } from "#engine/planning/shotBand";
import { programVersion } from "#server/version";
import type { Options } from "./options.ts";
import { readJob } from "./readJob.ts";
import { shotChart } from "./shotChart.ts";
import { shotDocumentOf } from "./shotDocumentOf.ts";
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
