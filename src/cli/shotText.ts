import type { UnaimedShot } from "#contract/resolve/question";
import type { Shot, ShotSample } from "#engine/motion/shot";
import type { ShotBand } from "#engine/planning/shotBand";
import { MPH, RPM } from "#engine/units";
import { bandText, modelText, OFF_LANE, SAMPLE_COLUMNS, SHOT_DEFAULTS, shotHeading, shotLines } from "#words/en/shotReport";
import { fixed } from "#words/figures";
import { type Column, paragraph, textTable } from "./textTable.ts";

const WIDTH = 100;

/** A shot as text: where it was at each place asked for, and what happened. */
export function shotText(shot: Shot, band: ShotBand | null, asked: UnaimedShot, defaults: readonly string[]): string {
  const { breakpoint } = shot.phases;
  const hooked = shot.course.boardAtPins === null ? null : shot.course.boardAtPins - breakpoint.board;
  const heading = [
    ...(asked.line === null ? [] : [shotHeading(asked.ball.name, asked.bowler.name, asked.line.laydownBoard, asked.line.launchAngleDeg)]),
    modelText(asked.model.motion, hooked),
  ];
  const sections = [
    heading,
    shot.samples.length === 0 ? [] : sampleTable(shot.samples),
    shotLines(shot).map((line) => `  ${line}`),
    band === null ? [] : paragraph(bandText(band), "  ", WIDTH),
    defaults.length === 0 ? [] : [`${SHOT_DEFAULTS}:`, ...paragraph(defaults.join(", "), "  ", WIDTH)],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join("\n"))
    .join("\n\n")}\n`;
}

function sampleTable(samples: readonly ShotSample[]): string[] {
  const figures = (heading: readonly [string, string], cell: (sample: ShotSample) => string): Column => ({
    heading,
    cells: samples.map(cell),
    align: "right",
  });
  return textTable(
    [
      figures(SAMPLE_COLUMNS.at, ({ yFt }) => fixed(yFt, 1)),
      figures(SAMPLE_COLUMNS.time, ({ tS }) => fixed(tS, 3)),
      figures(SAMPLE_COLUMNS.board, ({ board }) => fixed(board, 2)),
      figures(SAMPLE_COLUMNS.entry, ({ entryAngleDeg }) => fixed(entryAngleDeg, 2)),
      figures(SAMPLE_COLUMNS.speed, ({ velocityMps }) => fixed(Math.hypot(...velocityMps) / MPH, 2)),
      figures(SAMPLE_COLUMNS.spin, ({ omegaRadps }) => fixed(Math.hypot(...omegaRadps) / RPM, 0)),
      { heading: SAMPLE_COLUMNS.off, cells: samples.map(({ offLane }) => (offLane ? OFF_LANE : "")), align: "left" },
    ],
    3,
  );
}
