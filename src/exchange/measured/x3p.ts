import { measuredFault } from "#contract/problem";
import type { Profile } from "#engine/surface/roughness/profile";
import { checkedHeights } from "./heights.ts";
import { md5 } from "./md5.ts";
import { readX3pXml, type X3pXml } from "./x3pXml.ts";
import { unpacked } from "./x3pZip.ts";

const MOST_POINTS = 50_000_000;
const METRE_UM = 1e6;
const METRE_MM = 1e3;

interface Axis {
  readonly incremental: boolean;
  readonly type: string;
  readonly increment: number;
  readonly offset: number;
}

/** Heights along a line, which this format keeps without a byte sum, or over an area. */
type X3p =
  | { readonly kind: "profile"; readonly profile: Profile; readonly checksumModulo: null }
  | { readonly kind: "areal"; readonly um: Float64Array };

/**
 * X3P (ISO 25178-72): a ZIP of main.xml, the points in it or in a binary file, validity bits, checksums. Lengths in metres, value = offset + n · increment.
 * A single row is a profile, a matrix an area; several layers are refused.
 */
export function readX3p(bytes: Uint8Array): X3p {
  const files = unpacked(bytes);
  const main = files.get("main.xml");
  if (main === undefined) throw measuredFault("noMainXml", [...files.keys()].join(", "), "main.xml");
  checkMain(files, main);
  const xml = readX3pXml(main);
  const [columns, rows] = dimensions(xml);
  const z = axisOf(xml, "CZ");
  const raw = xml.texts.has("Record3/DataLink/PointDataLink")
    ? binaryPoints(xml, files, columns * rows, z)
    : listedPoints(xml, columns * rows);
  const um = checkedHeights(raw.map((n) => (z.offset + n * z.increment) * METRE_UM));
  if (rows > 1 || xml.texts.get("Record1/FeatureType") === "PCL") return { kind: "areal", um };
  const x = axisOf(xml, "CX");
  if (!x.incremental) throw measuredFault("axis", "CX", "an incremental axis, for a profile");
  return { kind: "profile", profile: { um, spacingMm: x.increment * METRE_MM }, checksumModulo: null };
}

/** md5checksum.hex holds the sum of main.xml, where it is there. */
function checkMain(files: ReadonlyMap<string, Uint8Array>, main: Uint8Array): void {
  const sums = files.get("md5checksum.hex");
  if (sums === undefined) return;
  const stated = /[0-9a-f]{32}/i.exec(new TextDecoder("latin1").decode(sums))?.[0].toLowerCase();
  if (stated !== md5(main)) throw measuredFault("checksum", stated ?? "none", `main.xml: ${md5(main)}`);
}

function dimensions({ texts }: X3pXml): readonly [columns: number, rows: number] {
  const list = texts.get("Record3/ListDimension");
  const [columns, rows, layers] =
    list === undefined
      ? ["X", "Y", "Z"].map((axis) => Number(texts.get(`Record3/MatrixDimension/Size${axis}`) ?? "1"))
      : [Number(list), 1, 1];
  if (layers !== 1) throw measuredFault("layers", layers, "1 layer");
  if (![columns, rows].every((count) => Number.isInteger(count) && count > 0) || columns * rows > MOST_POINTS)
    throw measuredFault("size", `${columns} × ${rows}`, `whole numbers, at most ${MOST_POINTS} points`);
  // A profile may lie along either side of the matrix.
  return columns === 1 ? [rows, 1] : [columns, rows];
}

function axisOf({ texts }: X3pXml, name: string): Axis {
  const at = (key: string) => texts.get(`Record1/Axes/${name}/${key}`);
  const [increment, offset] = [Number(at("Increment") ?? "1"), Number(at("Offset") ?? "0")];
  const type = at("DataType") ?? "D";
  const axisType = at("AxisType");
  if (
    !(axisType === "I" || axisType === "A") ||
    !BYTES.has(type) ||
    !(increment > 0 && Number.isFinite(increment)) ||
    !Number.isFinite(offset)
  ) {
    throw measuredFault(
      "axis",
      `${name}: ${axisType}, ${type}, ${at("Increment")}, ${at("Offset")}`,
      "AxisType I or A, DataType I, L, F or D, an increment above 0, both numbers finite",
    );
  }
  return { incremental: axisType === "I", type, increment, offset };
}

const BYTES: ReadonlyMap<string, number> = new Map([
  ["I", 2],
  ["L", 4],
  ["F", 4],
  ["D", 8],
]);

/** The last value of each datum is the height; the ones before are other axes. */
function listedPoints({ data }: X3pXml, count: number): Float64Array {
  if (data.length !== count) throw measuredFault("size", data.length, `${count} points`);
  return Float64Array.from(data, (text) => {
    if (text === "") return Number.NaN;
    const last = text.slice(text.lastIndexOf(";") + 1).trim();
    const value = Number(last);
    if (last === "" || !Number.isFinite(value))
      throw measuredFault("notANumber", text, "a number, or nothing for a point that was not measured");
    return value;
  });
}

function binaryPoints(xml: X3pXml, files: ReadonlyMap<string, Uint8Array>, count: number, z: Axis): Float64Array {
  const points = linked(xml, files, "PointDataLink", "MD5ChecksumPointData");
  const bytes = BYTES.get(z.type) ?? 0;
  if (points === null || points.length !== count * bytes)
    throw measuredFault("size", points?.length ?? "no file", `${count} points of ${bytes} bytes`);
  const view = new DataView(points.buffer, points.byteOffset, points.byteLength);
  const read = readerOf(view, z.type);
  const valid = linked(xml, files, "ValidPointsLink", "MD5ChecksumValidPoints");
  if (valid !== null && valid.length < Math.ceil(count / 8))
    throw measuredFault("size", valid.length, `${Math.ceil(count / 8)} bytes of validity bits`);
  return Float64Array.from({ length: count }, (_, i) => {
    // Bits run from the lowest of each byte; floating formats also say "not measured" by not being a number.
    if (valid !== null && ((valid[i >> 3] >> (i & 7)) & 1) === 0) return Number.NaN;
    const value = read(i);
    return Number.isFinite(value) ? value : Number.NaN;
  });
}

/** Little-endian, as the standard has them. */
function readerOf(view: DataView, type: string): (at: number) => number {
  if (type === "I") return (at) => view.getInt16(2 * at, true);
  if (type === "L") return (at) => view.getInt32(4 * at, true);
  return type === "F" ? (at) => view.getFloat32(4 * at, true) : (at) => view.getFloat64(8 * at, true);
}

function linked({ texts }: X3pXml, files: ReadonlyMap<string, Uint8Array>, link: string, sum: string): Uint8Array | null {
  const name = texts.get(`Record3/DataLink/${link}`);
  if (name === undefined) return null;
  const file = files.get(name);
  if (file === undefined) throw measuredFault("size", `no ${name}`, [...files.keys()].join(", "));
  const stated = texts.get(`Record3/DataLink/${sum}`)?.toLowerCase();
  if (stated !== undefined && stated !== md5(file)) throw measuredFault("checksum", stated, `${name}: ${md5(file)}`);
  return file;
}
