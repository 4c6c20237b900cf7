import { execFile, spawn } from "node:child_process";
import { promisify } from "node:util";
import type { TimedFrame } from "#engine/video/readPictures";

const run = promisify(execFile);

/** What ffmpeg knows of a film before it is decoded. */
export interface FilmFile {
  readonly path: string;
  /** Size as it is read: upright, and no larger than is needed. */
  readonly width: number;
  readonly height: number;
  /** Of that size against the upright picture's own. */
  readonly scale: number;
  /** Time of each picture, s. */
  readonly times: readonly number[];
}

/** Why a file has no pictures for us. */
export type NoFilm = "noFfmpeg" | "notAVideo" | "soundAlone";

/** A longer side than this tells no more of a ball and takes a multiple of the time. */
const LONGEST_SIDE = 1920;
const MOST_OUTPUT = 64_000_000;

interface Probed {
  readonly streams?: readonly {
    readonly codec_type?: string;
    readonly width?: number;
    readonly height?: number;
    readonly side_data_list?: readonly { readonly rotation?: number }[];
  }[];
  readonly packets?: readonly { readonly pts_time?: string; readonly flags?: string }[];
}

/** Looks a film over. @param path of a file that is there */
export async function filmFile(path: string): Promise<FilmFile | NoFilm> {
  const asked = [
    "-v",
    "error",
    "-show_entries",
    "stream=codec_type,width,height:stream_side_data=rotation",
    "-of",
    "json",
    fileArgument(path),
  ];
  const about = await probe(asked);
  if (typeof about === "string") return about;
  const streams = about.streams ?? [];
  const film = streams.find(({ codec_type }) => codec_type === "video");
  if (film === undefined) return streams.length > 0 ? "soundAlone" : "notAVideo";
  const packets = await probe([
    "-v",
    "error",
    "-select_streams",
    "v:0",
    "-show_entries",
    "packet=pts_time,flags",
    "-of",
    "json",
    fileArgument(path),
  ]);
  if (typeof packets === "string") return packets;
  const times = (packets.packets ?? [])
    .filter(({ flags }) => flags?.includes("D") !== true)
    .map(({ pts_time }) => Number(pts_time))
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  const turned = (film.side_data_list ?? []).some(({ rotation }) => rotation !== undefined && Math.abs(rotation) % 180 === 90);
  const [across, down] = [film.width ?? 0, film.height ?? 0];
  if (across < 64 || down < 64 || times.length === 0) return "notAVideo";
  const [width, height] = turned ? [down, across] : [across, down];
  const scale = Math.min(1, LONGEST_SIDE / Math.max(width, height));
  return { path, width: even(width * scale), height: even(height * scale), scale, times };
}

/** A name that begins with a dash, or looks like an address, is a file's all the same. */
function fileArgument(path: string): string {
  return `file:${path}`;
}

function even(length: number): number {
  return 2 * Math.round(length / 2);
}

async function probe(args: readonly string[]): Promise<Probed | NoFilm> {
  try {
    const { stdout } = await run("ffprobe", args, { maxBuffer: MOST_OUTPUT });
    return JSON.parse(stdout);
  } catch (fault) {
    return fault instanceof Error && "code" in fault && fault.code === "ENOENT" ? "noFfmpeg" : "notAVideo";
  }
}

/** The pictures one after the other, through a pipe: no more than one is held. */
export async function* picturesOf({ path, width, height, scale, times }: FilmFile): AsyncGenerator<TimedFrame> {
  const scaled = scale < 1 ? ["-vf", `scale=${width}:${height}`] : [];
  const args = [
    "-v",
    "error",
    "-i",
    fileArgument(path),
    "-map",
    "0:v:0",
    ...scaled,
    "-fps_mode",
    "passthrough",
    "-f",
    "rawvideo",
    "-pix_fmt",
    "rgb24",
    "-",
  ];
  const child = spawn("ffmpeg", args, { stdio: ["ignore", "pipe", "ignore"] });
  const rgb = new Uint8Array(3 * width * height);
  let filled = 0;
  let picture = 0;
  try {
    for await (const chunk of child.stdout as AsyncIterable<Uint8Array>) {
      for (let from = 0; from < chunk.length; ) {
        const taken = Math.min(rgb.length - filled, chunk.length - from);
        rgb.set(chunk.subarray(from, from + taken), filled);
        filled += taken;
        from += taken;
        if (filled < rgb.length) continue;
        filled = 0;
        if (picture < times.length) yield { width, height, rgb, t: times[picture++] };
      }
    }
  } finally {
    child.kill();
  }
}
