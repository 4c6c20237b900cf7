import { createHash } from "node:crypto";
import { zipSync } from "fflate";

/** Measured files made for the tests, by the words of the standards; nothing here reads what the program writes. */
export interface X3pParts {
  readonly columns: number;
  readonly rows: number;
  readonly layers?: number;
  readonly zType?: "I" | "L" | "F" | "D";
  readonly increment?: number;
  readonly offset?: number;
  readonly spacingM?: number;
  /** Raw values; null is a point that was not measured. */
  readonly raw: readonly (number | null)[];
  readonly binary?: boolean;
  /** Put before the root element. */
  readonly prologue?: string;
  readonly sums?: { readonly main?: string; readonly data?: string };
  readonly extra?: Readonly<Record<string, Uint8Array>>;
}

const md5 = (bytes: Uint8Array) => createHash("md5").update(bytes).digest("hex");
const text = (value: string) => new TextEncoder().encode(value);

export function x3pFile(parts: X3pParts): Uint8Array {
  const { columns, rows, raw, zType = "D" } = parts;
  const files: Record<string, Uint8Array> = { ...parts.extra };
  let record3: string;
  if (parts.binary === true) {
    const data = pointsOf(raw, zType);
    const valid = validityOf(raw);
    files["bindata/data.bin"] = data;
    files["bindata/valid.bin"] = valid;
    record3 = `<DataLink><PointDataLink>bindata/data.bin</PointDataLink><MD5ChecksumPointData>${parts.sums?.data ?? md5(data)}</MD5ChecksumPointData><ValidPointsLink>bindata/valid.bin</ValidPointsLink><MD5ChecksumValidPoints>${md5(valid)}</MD5ChecksumValidPoints></DataLink>`;
  } else {
    record3 = `<DataList>${raw.map((z) => (z === null ? "<Datum/>" : `<Datum>${z}</Datum>`)).join("")}</DataList>`;
  }
  const axis = (name: string, inside: string) => `<${name}>${inside}</${name}>`;
  const main = text(
    `<?xml version="1.0" encoding="UTF-8"?>${parts.prologue ?? ""}<p:ISO5436_2 xmlns:p="http://www.opengps.eu/2008/ISO5436_2"><Record1><FeatureType>${rows > 1 ? "SUR" : "PRF"}</FeatureType><Axes>${axis("CX", `<AxisType>I</AxisType><DataType>D</DataType><Increment>${parts.spacingM ?? 1e-6}</Increment><Offset>0</Offset>`)}${axis("CY", "<AxisType>I</AxisType><DataType>D</DataType><Increment>1e-6</Increment><Offset>0</Offset>")}${axis("CZ", `<AxisType>A</AxisType><DataType>${zType}</DataType><Increment>${parts.increment ?? 1}</Increment><Offset>${parts.offset ?? 0}</Offset>`)}</Axes></Record1><Record3><MatrixDimension><SizeX>${columns}</SizeX><SizeY>${rows}</SizeY><SizeZ>${parts.layers ?? 1}</SizeZ></MatrixDimension>${record3}</Record3><Record4><ChecksumFile>md5checksum.hex</ChecksumFile></Record4></p:ISO5436_2>`,
  );
  files["main.xml"] = main;
  files["md5checksum.hex"] = text(`${parts.sums?.main ?? md5(main)} *main.xml\n`);
  return zipSync(files, { level: 6 });
}

function pointsOf(raw: readonly (number | null)[], type: "I" | "L" | "F" | "D"): Uint8Array {
  const bytes = { I: 2, L: 4, F: 4, D: 8 }[type];
  const view = new DataView(new ArrayBuffer(raw.length * bytes));
  for (const [i, z] of raw.entries()) {
    if (type === "I") view.setInt16(2 * i, z ?? 0, true);
    else if (type === "L") view.setInt32(4 * i, z ?? 0, true);
    else if (type === "F") view.setFloat32(4 * i, z ?? 0, true);
    else view.setFloat64(8 * i, z ?? 0, true);
  }
  return new Uint8Array(view.buffer);
}

function validityOf(raw: readonly (number | null)[]): Uint8Array {
  const bits = new Uint8Array(Math.ceil(raw.length / 8));
  for (const [i, z] of raw.entries()) if (z !== null) bits[i >> 3] |= 1 << (i & 7);
  return bits;
}

export interface SmdParts {
  readonly spacingMm: number;
  /** As lines of the third record. */
  readonly heights: readonly (number | string)[];
  readonly unit?: string;
  readonly scale?: string;
  /** Ends each text string, as ISO 5436-2 has it; files written by hand leave it out. */
  readonly nul?: boolean;
  readonly modulo?: number;
  readonly checksumOff?: number;
  /** What stands behind the last record. */
  readonly end?: string;
}

/** SMD of ISO 5436-2: four records ended by 03 CR LF, text strings ended by NUL, checksum of the bytes before, 1A at the end. */
export function smdFile(parts: SmdParts): Uint8Array {
  const { heights, spacingMm, unit = "um", scale = "1.0e0", nul = true, modulo = 65536, checksumOff = 0, end = "\u001a" } = parts;
  const n = nul ? "\0" : "";
  const recordEnd = "\u0003\r\n";
  const body = [
    `ISO 5436 - 2000${n}\r\ninvented${n}\r\nPRF${n} 0 invented${n}\r\nCX${n} I${n} ${heights.length} mm${n} 1.0e0 D${n} ${spacingMm}\r\nCZ${n} A${n} ${heights.length} ${unit}${n} ${scale} D${n}\r\n`,
    `DATE${n} invented${n}\r\n`,
    `${heights.join("\r\n")}\r\n`,
  ]
    .map((record) => record + recordEnd)
    .join("");
  const sum = Buffer.from(body, "latin1").reduce((all, byte) => all + byte, 0);
  return text(`${body}${(sum + checksumOff) % modulo}\r\n${recordEnd}${end}`);
}
