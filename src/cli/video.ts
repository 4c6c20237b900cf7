import { sightingsOfFile, videoFileSchema } from "#contract/videoFile";
import { FIGURE_IDS } from "#engine/video/figures";
import { type Refusal, readSightings, type VideoRead } from "#engine/video/readSightings";
import type { NoFigure, ShotRead } from "#engine/video/shotRead";
import { programVersion } from "#server/version";
import { NO_FIGURE, NOT_READ, VIDEO, VIDEO_FIGURES } from "#words/en/video";
import { Params } from "#words/params";
import type { Options } from "./options.ts";
import { readChecked } from "./readJob.ts";
import { paragraph, textColumns } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";

const WIDTH = 100;

/** `gritwright video SIGHTINGS.json`: what a tracker saw, as measured shots. */
export async function video(file: string, options: Options, world: World): Promise<ExitCode> {
  const asked = await readChecked(file, videoFileSchema);
  return answer(readSightings(sightingsOfFile(asked)), options, world);
}

/** Where nothing at all could be read, a program finds the document where it looks for it, and a person the sentences. */
function answer(read: VideoRead, options: Options, world: World): ExitCode {
  const isRead = read.shots.length > 0;
  const document = `${JSON.stringify(documentOf(read), null, 2)}\n`;
  world.print(options.json || !isRead ? document : textOf(read));
  if (!isRead && !options.json) world.tell(`${read.refused.flatMap(refusedLines).join("\n")}\n`);
  return isRead ? 0 : 3;
}

function documentOf({ shots, refused }: VideoRead) {
  return {
    gritwright: 1,
    kind: "video",
    engineVersion: programVersion(),
    shots: shots.map(({ samples, figures, why }) => ({
      samples,
      figures,
      why: Object.fromEntries(Object.entries(why).map(([id, reason]) => [id, NO_FIGURE[reason]])),
    })),
    refused: refused.map((refusal) => ({ id: refusal.id, text: refusalText(refusal) })),
  };
}

function refusalText(refusal: Refusal): string {
  return NOT_READ[refusal.id](new Params(refusal));
}

function textOf({ shots, refused }: VideoRead): string {
  const sections = [
    [VIDEO.heading(shots.length)],
    ...shots.map(shotLines),
    ...(refused.length === 0 ? [] : [[`${VIDEO.refused}:`, ...refused.flatMap(refusedLines)]]),
    [...paragraph(VIDEO.ends, "", WIDTH), ...paragraph(VIDEO.synthetic, "", WIDTH)],
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function refusedLines(refusal: Refusal): string[] {
  return paragraph(refusalText(refusal), "  ", WIDTH);
}

function shotLines({ samples, figures, why }: ShotRead, index: number): string[] {
  const told = FIGURE_IDS.flatMap((id) => {
    const figure = figures[id];
    const { name, figure: write } = VIDEO_FIGURES[id];
    return figure === null ? [[name, "–", ""]] : [[name, write(figure.value), VIDEO.interval(write(figure.low), write(figure.high))]];
  });
  const columns = [0, 1, 2].map((column) => ({
    cells: told.map((row) => `${column === 0 ? "  " : ""}${row[column]}`),
    align: column === 1 ? ("right" as const) : ("left" as const),
  }));
  const reasons = [...new Set(Object.values(why))] as NoFigure[];
  return [
    VIDEO.shot(index + 1, samples[0].tS),
    ...textColumns(columns),
    ...reasons.flatMap((reason) => paragraph(NO_FIGURE[reason], "  ", WIDTH)),
  ];
}
