import { JobFault } from "#contract/problem";
import { PAGE_PAINT } from "#drawing/paint";
import { profileChart } from "#drawing/profileChart";
import { EngineFault } from "#engine/fault";
import { arealFigures } from "#engine/surface/roughness/areal";
import { type Measured, type MeasureOptions, measureRoughness } from "#engine/surface/roughness/measure";
import { readMeasured } from "#exchange/measured/measuredFile";
import { USUAL_TEXT } from "#exchange/measured/profileText";
import { PROFILE } from "#words/en/measuring";
import { fixed } from "#words/figures";
import { problemText } from "#words/problemText";
import type { ProfileSeen } from "./protocol.ts";

/** A tester's file: its profile drawn, and every figure of it; or why it cannot be read. */
export function readProfile(name: string, bytes: Uint8Array, options: MeasureOptions): ProfileSeen {
  try {
    const found = readMeasured(name, bytes, USUAL_TEXT);
    if (found.kind === "areal") {
      const { saUm, sqUm, points, missing } = arealFigures(found.um);
      const rows = [["Sa", `${fixed(saUm, 4)} µm`] as const, ["Sq", `${fixed(sqUm, 4)} µm`] as const];
      return {
        kind: "seen",
        picture: null,
        said: `${PROFILE.areal}, ${PROFILE.points(points, missing)}`,
        rows,
        raUm: null,
        rzUm: null,
        rsmUm: null,
      };
    }
    const measured = measureRoughness(found.profile, options);
    const figures = told(measured);
    const said = found.checksumModulo === null ? figures.said : `${figures.said}; ${PROFILE.checksum(found.checksumModulo)}`;
    return { kind: "seen", ...drawn(name, measured, found.profile.spacingMm), ...figures, said };
  } catch (error) {
    if (error instanceof JobFault) return { kind: "unreadable", sentences: error.problems.map((problem) => problemText(problem)) };
    if (error instanceof EngineFault)
      return { kind: "unreadable", sentences: error.problems.map(({ path, value, allowed }) => `${path}: ${String(value)}; ${allowed}`) };
    throw error;
  }
}

function drawn(name: string, measured: Measured, spacingMm: number): { readonly picture: string } {
  const { raUm, rqUm, rzUm, cutoffMm, evaluationMm } = measured;
  const figures = `Ra ${fixed(raUm, 3)}  Rq ${fixed(rqUm, 3)}  Rz ${fixed(rzUm, 3)} µm   ${PROFILE.short(cutoffMm, evaluationMm)}`;
  return { picture: profileChart({ name, ...measured.drawn, spacingMm, raUm, cutoffMm, figures }, PAGE_PAINT, "profile") };
}

const MM_UM = 1000;

function told(measured: Measured): Pick<Extract<ProfileSeen, { kind: "seen" }>, "said" | "rows" | "raUm" | "rzUm" | "rsmUm"> {
  const { raUm, rzUm, rsmMm, cutoffMm, cutoffBy, samplingLengths, evaluationMm, points, missing } = measured;
  const rows: readonly (readonly [string, number | null, string])[] = [
    ["Ra", raUm, "µm"],
    ["Rq", measured.rqUm, "µm"],
    ["Rz", rzUm, "µm"],
    ["Rt", measured.rtUm, "µm"],
    ["RSm", rsmMm, "mm"],
    ["Rsk", measured.rsk, ""],
    ["Rku", measured.rku, ""],
    ["Rpk", measured.rpkUm, "µm"],
    ["Rvk", measured.rvkUm, "µm"],
  ];
  return {
    said: `${PROFILE.evaluated(cutoffMm, PROFILE.cutoffBy[cutoffBy], samplingLengths, evaluationMm)}, ${PROFILE.points(points, missing)}`,
    rows: rows.map(([figure, value, unit]) => [figure, value === null ? "–" : `${fixed(value, 3)} ${unit}`.trim()] as const),
    raUm,
    rzUm,
    rsmUm: rsmMm === null ? null : rsmMm * MM_UM,
  };
}
