import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { filmFile, picturesOf } from "#cli/filmPictures";
import { LANE_EDGE } from "#engine/lane/geometry";
import { FOOT } from "#engine/units";
import type { Vector } from "#engine/vector";
import { project } from "#engine/video/pinhole";
import { readPictures } from "#engine/video/readPictures";
import { median } from "#engine/video/robust";
import { type Against, againstTruth, type Held, OUTCOME_WORDS, ROW_NAMES, rms, shareWithin, trueFigures, worst } from "./video/accuracy.ts";
import { type Film, inventedFilm, writeFilm } from "./video/film.ts";
import { chanceOf } from "./video/shots.ts";

/*
 * `npm run video-films -- measure FROM TO ROWS.json` draws films, reads them and holds them against their truth; some twenty seconds each.
 * `npm run video-films -- keep` draws the short films that tests read, with their taps and truth beside them.
 * `npm run video-films -- table ROWS.json …` writes what they came to into docs/model/video.md.
 */

const PAGE = join(import.meta.dirname, "..", "docs", "model", "video.md");
/** From here on nothing was chosen by a film. */
const FIRST_SEED = 90_000;
/** A finger is this far beside its mark, px. */
const FINGER_PX = 4;

interface Row {
  readonly seed: number;
  readonly film: string;
  readonly refused: readonly string[];
  readonly figures: readonly (readonly [Held, Against])[];
}

const [what, ...rest] = process.argv.slice(2);
if (what === "measure") await measure(Number(rest[0]), Number(rest[1]), rest[2]);
else if (what === "table") writeTable(rest.flatMap((file): Row[] => JSON.parse(readFileSync(file, "utf8"))));
else if (what === "keep") await keep();
else throw new Error("keep, measure FROM TO ROWS.json, or table ROWS.json …");

async function measure(from: number, to: number, into: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "gritwright-films-"));
  const rows: Row[] = [];
  for (let i = from; i < to; i++) {
    const seed = FIRST_SEED + i;
    const film = inventedFilm(seed);
    const path = join(folder, `${seed}.mp4`);
    await writeFilm(film, path, seed);
    rows.push(await read(film, path, seed));
    writeFileSync(into, JSON.stringify(rows));
    rmSync(path);
  }
  rmSync(folder, { recursive: true });
}

/** Films that tests read: one to be read, and one whose ball has the lane's colour. */
async function keep(): Promise<void> {
  const folder = join(import.meta.dirname, "..", "test", "video", "films");
  mkdirSync(folder, { recursive: true });
  for (const [name, seed, otherwise] of [
    ["two-lanes", 80_002, {}],
    ["like-the-lane", 80_003, { ball: [186, 160, 132] }],
  ] as const) {
    const film = inventedFilm(seed, { ...otherwise, neighbour: true, bowler: true });
    await writeFilm(film, join(folder, `${name}.mp4`), seed);
    const [left, right, foot] = [[-LANE_EDGE, 0, 0] as const, [LANE_EDGE, 0, 0] as const, [0, 60 * FOOT, 0] as const].map((at) => {
      const { u, v } = project(film.camera, at);
      return [Math.round(u) + 3, Math.round(v) - 2];
    });
    const { hand } = film.truth.setup.bowler;
    const write = (what: string, value: object) =>
      writeFileSync(join(folder, `${name}.${what}.json`), `${JSON.stringify(value, null, 2)}\n`);
    write("taps", { foulLeft: left, foulRight: right, headPinFoot: foot, hand });
    write("truth", { seed, ...trueFigures(film.truth) });
  }
}

async function read(film: Film, path: string, seed: number): Promise<Row> {
  const { camera, style, truth } = film;
  const { width, height } = camera.picture;
  const chance = chanceOf(seed + 5);
  const tap = (at: Vector) => {
    const { u, v } = project(camera, at);
    return { u: u + chance.normal(0, FINGER_PX), v: v + chance.normal(0, FINGER_PX), at };
  };
  const file = await filmFile(path);
  if (typeof file === "string") throw new Error(`${path}: ${file}`);
  const { shots, refused } = await readPictures({
    run: () => picturesOf(file),
    taps: [tap([-LANE_EDGE, 0, 0]), tap([LANE_EDGE, 0, 0]), tap([0, 60 * FOOT, 0])],
    hand: truth.setup.bowler.hand,
    readout: { readoutS: 0.01, readoutWithinS: 0.004 },
  });
  return {
    seed,
    film: `${width}x${height}, ${style.fps}/s`,
    refused: refused.map(({ id }) => id),
    figures: shots.length === 0 ? [] : againstTruth(shots[0], truth),
  };
}

function writeTable(rows: readonly Row[]): void {
  const lines = OUTCOME_WORDS.map((id) => {
    const seen = rows.flatMap(({ figures }) => figures.filter(([held]) => held === id).map(([, against]) => against));
    const half = median(seen.map((one) => one.half));
    return `| ${ROW_NAMES[id]} | ${figure(rms(seen))} | ${figure(worst(seen))} | ${figure(half)} | ${Math.round(100 * shareWithin(seen))} | ${seen.length} |`;
  });
  const read = rows.filter(({ figures }) => figures.length > 0).length;
  const all = rows.flatMap(({ figures }) => figures.map(([, against]) => against));
  const causes = [...new Set(rows.filter(({ figures }) => figures.length === 0).flatMap(({ refused }) => refused))].join(", ");
  const table = [
    "| | RMS | worst | median half interval | held, % | told |",
    "|---|---|---|---|---|---|",
    ...lines,
    "",
    `${read} of ${rows.length} films were read${causes === "" ? "" : ` (refused: ${causes})`}; of all figures together the intervals held ${Math.round(100 * shareWithin(all))} %.`,
  ].join("\n");
  const [before, after] = readFileSync(PAGE, "utf8").split(/<!-- films -->[\s\S]*<!-- \/films -->/);
  writeFileSync(PAGE, `${before}<!-- films -->\n${table}\n<!-- /films -->${after}`);
}

function figure(value: number): string {
  return value < 0.1 ? value.toFixed(3) : value < 10 ? value.toFixed(2) : value.toFixed(0);
}
