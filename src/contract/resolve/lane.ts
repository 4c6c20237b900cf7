import { ASSUMPTIONS } from "#engine/assumptions";
import type { FilmPoint, GivenFriction, Lane, OilPass, OilSheet, PatternSource } from "#engine/lane/lane";
import { oilSheetTotalMl } from "#engine/lane/oilSheet";
import type { JobLane } from "../job/lane.ts";
import { JobFault } from "../problem.ts";
import type { DefaultsTaken } from "./defaultsTaken.ts";

/** Largest share by which a sheet's stated total may differ from what its passes add up to: rounding of printed figures. */
const TOTAL_TOLERANCE = 0.02;

/**
 * The oiled lane of a job file.
 *
 * @throws {JobFault} if an oil sheet's stated total disagrees with its passes, or only friction is given
 */
export function resolveLane(job: JobLane, defaults: DefaultsTaken): Lane {
  const pattern = patternOf(job, defaults);
  if (pattern === null) {
    throw new JobFault("invalid", [
      {
        path: "lane.friction",
        value: job.friction,
        allowed: "pattern, oilSheet or filmPoints",
        reason: { id: "notForPlan", params: {} },
      },
    ]);
  }
  return { pattern, playedShots: defaults.or("lane.playedShots", job.playedShots, 0) };
}

/** Friction given outright, or null where the lane is oiled. */
export function givenFriction(job: JobLane): GivenFriction | null {
  const { constant, oil, dry, changeAtFt, widthFt } = job.friction ?? {};
  if (constant !== undefined) return { kind: "constant", mu: constant };
  if (oil === undefined || dry === undefined || changeAtFt === undefined || widthFt === undefined) return null;
  return { kind: "twoZone", oil, dry, changeAtFt, widthFt };
}

function patternOf(job: JobLane, defaults: DefaultsTaken): PatternSource | null {
  if (job.pattern !== undefined) return { kind: "named", id: job.pattern };
  if (job.oilSheet !== undefined) return { kind: "oilSheet", sheet: resolveSheet(job.oilSheet, defaults) };
  if (job.filmPoints === undefined) return null;
  const { lengthFt, points } = job.filmPoints;
  const toUm = job.filmPoints.unit === "units" ? ASSUMPTIONS["film.unit"].value : 1;
  const name = defaults.or("lane.filmPoints.name", job.filmPoints.name, "Measured film");
  return { kind: "filmPoints", name, lengthFt, points: points.map(({ board, ft, film }): FilmPoint => ({ board, ft, um: film * toUm })) };
}

function resolveSheet(job: NonNullable<JobLane["oilSheet"]>, defaults: DefaultsTaken): OilSheet {
  const sheet: OilSheet = {
    name: defaults.or("lane.oilSheet.name", job.name, "Oil sheet"),
    lengthFt: job.lengthFt,
    passes: job.passes.map(fromFoulLine),
    stated: { totalMl: job.stated?.totalMl ?? null, ratio: job.stated?.ratio ?? null },
  };
  refuseWrongTotal(sheet);
  return sheet;
}

/** Passes back are often written from the far end; film does not depend on it, so every stretch is kept from near to far. */
function fromFoulLine(pass: OilPass): OilPass {
  return { ...pass, fromFt: Math.min(pass.fromFt, pass.toFt), toFt: Math.max(pass.fromFt, pass.toFt) };
}

function refuseWrongTotal(sheet: OilSheet): void {
  const stated = sheet.stated.totalMl;
  if (stated === null) return;
  const computed = oilSheetTotalMl(sheet);
  if (Math.abs(computed - stated) <= TOTAL_TOLERANCE * stated) return;
  throw new JobFault("invalid", [
    {
      path: "lane.oilSheet.stated.totalMl",
      value: stated,
      allowed: `within ${TOTAL_TOLERANCE * 100} % of ${computed.toFixed(2)} mL, which is what the passes add up to`,
      reason: { id: "totalDisagrees", params: { statedMl: stated, computedMl: computed } },
    },
  ]);
}
