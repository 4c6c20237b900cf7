import { gaugeFileSchema } from "#contract/bench/readingsFile";
import { EngineFault } from "#engine/fault";
import { individualsChart } from "#engine/surface/readings/controlChart";
import { type Anova, anovaStudy, type GaugeReading, type GaugeResult, rangeStudy } from "#engine/surface/readings/gauge";
import { programVersion } from "#server/version";
import { GAUGE } from "#words/en/measuring";
import { fixed } from "#words/figures";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { textTable } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";

/** `gritwright gauge FILE`: how far a tester and the people who use it can be believed, by both methods, and whether it still reads its reference piece as it did. */
export async function gauge(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, gaugeFileSchema);
  const anova = asked.readings ? anovaStudy(asked.readings) : null;
  const range = asked.readings ? rangeIfItReaches(asked.readings) : null;
  const percentOfTolerance = anova === null || asked.tolerance === undefined ? null : (600 * anova.grr) / asked.tolerance;
  const referencePiece = asked.referencePiece ? individualsChart(asked.referencePiece) : null;
  if (options.json) {
    const document = {
      gritwright: 1,
      kind: "gauge",
      engineVersion: programVersion(),
      unit: asked.unit ?? null,
      range,
      anova,
      percentOfTolerance,
      referencePiece,
    };
    world.print(`${JSON.stringify(document, null, 2)}\n`);
    return 0;
  }
  const sections = [
    ...(anova === null ? [] : studyLines(range, anova)),
    ...(referencePiece === null
      ? []
      : [[GAUGE.chart(referencePiece.mean, referencePiece.lower, referencePiece.upper), GAUGE.outside(referencePiece.outside)]]),
  ];
  world.print(`${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`);
  return 0;
}

function studyLines(range: GaugeResult | null, anova: Anova): string[][] {
  return [
    range === null ? [GAUGE.tooLargeForRange] : [`${GAUGE.range}:`, ...resultTable(range), `  ${GAUGE.distinct(range.distinct)}`],
    [
      `${GAUGE.anova}:`,
      ...resultTable(anova),
      `  ${GAUGE.distinct(anova.distinct)}`,
      `  ${GAUGE.interaction(anova.interactionF, anova.pooled)}`,
    ],
    [GAUGE.verdict(anova.percent.grr)],
  ];
}

/** The range method has tables for small studies only; a larger one has the analysis of variance alone. */
function rangeIfItReaches(readings: readonly GaugeReading[]): GaugeResult | null {
  try {
    return rangeStudy(readings);
  } catch (fault) {
    if (fault instanceof EngineFault) return null;
    throw fault;
  }
}

function resultTable(result: GaugeResult): string[] {
  const rows = ["ev", "av", "grr", "pv"] as const;
  return textTable([
    { heading: ["", ""], align: "left", cells: rows.map((row) => `  ${GAUGE.rows[row]}`) },
    { heading: [GAUGE.columns.sd, ""], align: "right", cells: rows.map((row) => fixed(result[row], 6)) },
    { heading: [GAUGE.columns.share, ""], align: "right", cells: rows.map((row) => fixed(result.percent[row], 2)) },
  ]);
}
