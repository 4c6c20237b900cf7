import { access } from "node:fs/promises";
import { sightingsOfFile, videoFileSchema } from "#contract/videoFile";
import { LEAST_TAPS, tapsOf, type VideoTaps, videoTapsSchema } from "#contract/videoTaps";
import { FIGURE_IDS } from "#engine/video/figures";
import { readPictures } from "#engine/video/readPictures";
import { type Refusal, readSightings, type VideoRead } from "#engine/video/readSightings";
import type { NoFigure, ShotRead } from "#engine/video/shotRead";
import { programVersion } from "#server/version";
import { NO_FIGURE, NO_FILM, NOT_READ, VIDEO, VIDEO_FIGURES } from "#words/en/video";
import { Params } from "#words/params";
import { filmFile, type NoFilm, picturesOf } from "./filmPictures.ts";
import type { Options } from "./options.ts";
import { fileFault, readChecked } from "./readJob.ts";
import { paragraph, textColumns } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";

const WIDTH = 100;

/** `gritwright video SIGHTINGS.json`: what a tracker saw, as measured shots; `gritwright video FILE.mp4 --taps taps.json`: a film itself. */
export async function video(file: string, options: Options, world: World): Promise<ExitCode> {
  if (options.taps !== null) return answer(await readFilm(file, await readChecked(options.taps, videoTapsSchema)), options, world);
  const asked = await readChecked(file, videoFileSchema);
  return answer(readSightings(sightingsOfFile(asked)), options, world);
}

/** A telephone held across reads its lines out over so long, s; upright, along the lane's own direction, it hardly matters which. */
const READOUT = { readoutS: 0.01, readoutWithinS: 0.004 };

async function readFilm(path: string, given: VideoTaps): Promise<VideoRead | NoFilm> {
  await access(path).catch((fault: unknown) => {
    throw fileFault(path, fault);
  });
  const film = await filmFile(path);
  if (typeof film === "string") return film;
  const taps = tapsOf(given, film.scale);
  if (taps.length < LEAST_TAPS) return { shots: [], refused: [{ id: "fewMarks", params: { marks: taps.length, least: LEAST_TAPS } }] };
  const { times } = film;
  const stored = (times.length - 1) / (times[times.length - 1] - times[0]);
  const slowed = given.captureFps === undefined || !(stored > 0) ? 1 : stored / given.captureFps;
  const timed = { ...film, times: times.map((time) => time * slowed) };
  return readPictures({ run: () => picturesOf(timed), taps, hand: given.hand ?? "right", readout: READOUT });
}

/** Where nothing at all could be read, a program finds the document where it looks for it, and a person the sentences. */
function answer(read: VideoRead | NoFilm, options: Options, world: World): ExitCode {
  const { shots } = typeof read === "string" ? { shots: [] } : read;
  const refused =
    typeof read === "string" ? [{ id: read, text: NO_FILM[read] }] : read.refused.map((one) => ({ id: one.id, text: refusalText(one) }));
  const told: Told = { shots, refused };
  const isRead = shots.length > 0;
  world.print(options.json || !isRead ? `${JSON.stringify(documentOf(told), null, 2)}\n` : textOf(told));
  if (!isRead && !options.json) world.tell(`${refused.flatMap(refusedLines).join("\n")}\n`);
  return isRead ? 0 : 3;
}

/** What was read, and in words what was not. */
interface Told {
  readonly shots: readonly ShotRead[];
  readonly refused: readonly { readonly id: string; readonly text: string }[];
}

function documentOf({ shots, refused }: Told) {
  return {
    gritwright: 1,
    kind: "video",
    engineVersion: programVersion(),
    shots: shots.map(({ samples, figures, why }) => ({
      samples,
      figures,
      why: Object.fromEntries(Object.entries(why).map(([id, reason]) => [id, NO_FIGURE[reason]])),
    })),
    refused,
  };
}

function refusalText(refusal: Refusal): string {
  return NOT_READ[refusal.id](new Params(refusal));
}

function textOf({ shots, refused }: Told): string {
  const sections = [
    [VIDEO.heading(shots.length)],
    ...shots.map(shotLines),
    ...(refused.length === 0 ? [] : [[`${VIDEO.refused}:`, ...refused.flatMap(refusedLines)]]),
    [...paragraph(VIDEO.ends, "", WIDTH), ...paragraph(VIDEO.synthetic, "", WIDTH)],
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function refusedLines({ text }: Told["refused"][number]): string[] {
  return paragraph(text, "  ", WIDTH);
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
