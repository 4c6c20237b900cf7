import { measuredFault } from "#contract/problem";
import type { Profile } from "#engine/surface/roughness/profile";
import { checkedHeights } from "./heights.ts";
import { metresOf } from "./units.ts";

export interface TextOptions {
  /** Units of the two columns where the header does not say. */
  readonly xUnit: string;
  readonly zUnit: string;
}

export const USUAL_TEXT: TextOptions = { xUnit: "mm", zUnit: "um" };

const MOST_POINTS = 50_000_000;
const COMMENT = 35;
/** Distances may differ from even spacing by this share of it. */
const EVEN = 0.02;

/**
 * Two columns of text, distance and height: commas, semicolons, tabs or spaces between, `#` before remarks, a header such as `x_mm,z_um` that names the units. A height that is empty or `nan` was not measured.
 * Read line by line from the bytes, so that ten million points need no more memory than their numbers.
 */
export function readProfileText(bytes: Uint8Array, options: TextOptions): Profile {
  const heights: number[] = [];
  const spacing = { first: Number.NaN, last: Number.NaN };
  let units = options;
  let started = false;
  let lineNumber = 0;
  for (const line of lines(bytes)) {
    lineNumber++;
    if (line === "" || line.charCodeAt(0) === COMMENT) continue;
    const cells = split(line);
    if (!started && Number.isNaN(Number(cells[0]))) {
      units = unitsOf(cells, options);
      started = true;
      continue;
    }
    started = true;
    if (cells.length !== 2) throw measuredFault("columns", `line ${lineNumber}: ${cells.length} columns`, "2 columns, distance and height");
    const x = Number(cells[0]);
    if (cells[0] === "" || !Number.isFinite(x)) throw measuredFault("notANumber", `line ${lineNumber}: ${cells[0]}`, "a distance");
    checkEven(spacing, x, heights.length, lineNumber);
    heights.push(heightOf(cells[1], lineNumber));
    if (heights.length > MOST_POINTS) throw measuredFault("tooLarge", heights.length, `at most ${MOST_POINTS} points`);
  }
  if (heights.length < 2) throw measuredFault("noPoints", heights.length, "at least 2 points");
  const toUm = metresOf(units.zUnit) / metresOf("um");
  return {
    um: checkedHeights(Float64Array.from(heights, (z) => z * toUm)),
    spacingMm: ((spacing.last - spacing.first) / (heights.length - 1)) * (metresOf(units.xUnit) / metresOf("mm")),
  };
}

function* lines(bytes: Uint8Array): Generator<string> {
  const decoder = new TextDecoder("utf-8");
  let from = 0;
  while (from < bytes.length) {
    let end = bytes.indexOf(10, from);
    if (end < 0) end = bytes.length;
    yield decoder.decode(bytes.subarray(from, end)).trim();
    from = end + 1;
  }
}

function split(line: string): string[] {
  if (line.includes(";")) return line.split(";").map((cell) => cell.trim().replace(",", "."));
  if (line.includes(",")) return line.split(",").map((cell) => cell.trim());
  return line.split(/\s+/);
}

/** `x_mm`, `z [um]`, `distance (mm)`: the unit is the last word of the heading. */
function unitsOf(cells: readonly string[], options: TextOptions): TextOptions {
  if (cells.length !== 2) throw measuredFault("columns", cells.join(" | "), "2 columns, distance and height");
  const unit = (heading: string, otherwise: string) => {
    const words = heading.split(/[\s_[\]()/]+/).filter((word) => word !== "");
    if (words.length < 2) return otherwise;
    const last = words[words.length - 1];
    metresOf(last);
    return last;
  };
  return { xUnit: unit(cells[0], options.xUnit), zUnit: unit(cells[1], options.zUnit) };
}

function heightOf(cell: string, lineNumber: number): number {
  if (cell === "" || /^nan$/i.test(cell)) return Number.NaN;
  const z = Number(cell);
  if (!Number.isFinite(z))
    throw measuredFault("notANumber", `line ${lineNumber}: ${cell}`, "a height, or nothing for a point that was not measured");
  return z;
}

/** Distances must rise evenly: the first step sets the pace, the mean so far keeps it. */
function checkEven(spacing: { first: number; last: number }, x: number, count: number, lineNumber: number): void {
  if (count === 0) spacing.first = x;
  else {
    const step = x - spacing.last;
    const mean = count > 1 ? (spacing.last - spacing.first) / (count - 1) : step;
    if (!(step > 0) || Math.abs(step - mean) > EVEN * mean)
      throw measuredFault("uneven", `line ${lineNumber}: ${x}`, "distances that rise evenly");
  }
  spacing.last = x;
}
