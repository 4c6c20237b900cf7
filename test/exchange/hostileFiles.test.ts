import { zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { bagFileSchema } from "#contract/bagFile";
import { benchFileSchema } from "#contract/bench/benchFile";
import { limitsFileSchema } from "#contract/bench/limitsFile";
import { padWorkFileSchema } from "#contract/bench/padWorkFile";
import { gaugeFileSchema, readingsFileSchema } from "#contract/bench/readingsFile";
import { carryFileSchema } from "#contract/carryFile";
import { complaintFileSchema } from "#contract/complaintFile";
import { correctFileSchema } from "#contract/correctFile";
import { csvRows } from "#contract/csv";
import { deliveryFileSchema } from "#contract/deliveryFile";
import { checkFile } from "#contract/job/checkJob";
import { jobFileSchema } from "#contract/job/jobFile";
import { JobFault } from "#contract/problem";
import { RecordsFault } from "#contract/records/fault";
import { transitionFileSchema } from "#contract/transitionFile";
import { videoFileSchema } from "#contract/videoFile";
import { readJobText } from "#exchange/jobFileText";
import { readMeasured } from "#exchange/measured/measuredFile";
import { USUAL_TEXT } from "#exchange/measured/profileText";
import { readTable } from "#records/lists/readTable";
import { photoOf } from "#records/photos/photoBytes";
import { pngChunk } from "../records/pictures.ts";
import { type Counter, counter } from "../server/countedWork.ts";
import { HOSTILE } from "../server/hostileJson.ts";
import { x3pFile } from "./measuredFiles.ts";

/*
 * Twice as much of what is hostile makes at most twice the work, and a little more, in everything that reads a file. Work is counted, not timed.
 */

/** For twice the size; a little more where the numbers in it took more letters. What is packed is shorter than what it is. */
const MOST = 2.1;
/** Below the number of keys that is read, and above it. */
const SIZES = [400, 1100];
/** What a parser of YAML takes is much work already. */
const OF_TEXT = [400];

let counted: Counter;
beforeAll(() => {
  counted = counter();
});
afterAll(() => counted.end());

/** A file is read, or refused with a fault that says what is wrong; nothing else may come of it. */
async function tried(read: () => unknown): Promise<void> {
  try {
    await read();
  } catch (fault) {
    if (!(fault instanceof JobFault || fault instanceof RecordsFault)) throw fault;
  }
}

async function growsEvenly<File extends { readonly length: number }>(
  make: (size: number) => File,
  read: (file: File) => unknown,
  sizes = SIZES,
): Promise<void> {
  for (const size of sizes) {
    const [one, two] = [make(size), make(2 * size)];
    // Once before it is counted: what is made at the first look is no work of the file's.
    for (const file of [one, two]) await tried(() => read(file));
    const small = await counted.of(() => tried(() => read(one)));
    const large = await counted.of(() => tried(() => read(two)));
    const most = (small * MOST * Math.max(2, two.length / one.length)) / 2;
    expect(large, `${size}: ${small} for ${one.length} bytes, then ${large} for ${two.length}`).toBeLessThanOrEqual(most);
  }
}

const SCHEMAS = {
  job: jobFileSchema,
  bag: bagFileSchema,
  bench: benchFileSchema,
  limits: limitsFileSchema,
  padWork: padWorkFileSchema,
  readings: readingsFileSchema,
  gauge: gaugeFileSchema,
  carry: carryFileSchema,
  complaint: complaintFileSchema,
  correct: correctFileSchema,
  delivery: deliveryFileSchema,
  transition: transitionFileSchema,
  video: videoFileSchema,
};

const text = (words: string) => new TextEncoder().encode(words);

describe.each(Object.entries(SCHEMAS))("the %s file", (_, schema) => {
  test.each(Object.entries(HOSTILE))("of %s", async (_kind, write) => {
    await growsEvenly(
      (size) => write(schema, size),
      (body) => checkFile(schema, JSON.parse(body)),
    );
  });
});

test.each(Object.entries(HOSTILE))("the text of a job file of %s", async (_, write) => {
  await growsEvenly((size) => text(write(jobFileSchema, size)), readJobText, OF_TEXT);
});

const lines = (size: number, line: (i: number) => string) => Array.from({ length: size }, (_, i) => line(i)).join("\n");

const YAML: Readonly<Record<string, (size: number) => string>> = {
  "one key again and again": (size) => lines(size, () => "a: 1"),
  "aliases of one list": (size) => `a: &a [1, 2]\n${lines(size, (i) => `b${i}: *a`)}`,
  anchors: (size) => lines(size, (i) => `a${i}: &a${i} 1`),
  remarks: (size) => lines(size, () => "# nothing"),
  "unknown tags": (size) => lines(size, (i) => `a${i}: !unknown 1`),
  "faults in each line": (size) => lines(size, () => "a: b: c: ]"),
  "open quotes": (size) => lines(size, () => `a: "`),
  "many documents": (size) => lines(size, () => "---\na: 1"),
  "a long line of quotes": (size) => `a: ${"''".repeat(10 * size)}`,
  "a text in many lines": (size) => `a: >\n${lines(size, () => "  words")}`,
  "flow lists that are not closed": (size) => lines(size, (i) => `a${i}: [1, 2`),
  "empty lines": (size) => `a:${"\n".repeat(10 * size)}`,
  tabs: (size) => `a:${"\t".repeat(size)}1`,
};

test.each(Object.entries(YAML))("a file of %s", async (_, write) => {
  await growsEvenly((size) => text(write(size)), readJobText, OF_TEXT);
});

const points = (size: number) => Array.from({ length: size }, (_, i) => i % 7);
const smd = (inside: string, last: string) =>
  `CX I 1 mm 1 D 1\r\nCZ A 1 mm 1 D\r\n\u0003\r\n\u0003\r\n${inside}\u0003\r\n${last}\u0003\r\n\u001a`;
const MEASURED: Readonly<Record<string, readonly [string, (size: number) => Uint8Array]>> = {
  "X3P of many points": ["a.x3p", (size) => x3pFile({ columns: size, rows: 1, raw: points(size) })],
  "X3P of many points in bytes": ["a.x3p", (size) => x3pFile({ columns: size, rows: 1, raw: points(size), binary: true })],
  "X3P of many files": ["a.x3p", (size) => zipSync(Object.fromEntries(Array.from({ length: size }, (_, i) => [`f${i}`, text("x")])))],
  "X3P of many elements": ["a.x3p", (size) => zipSync({ "main.xml": text(`<a>${"<b>1</b>".repeat(size)}</a>`) })],
  "X3P of attributes": ["a.x3p", (size) => zipSync({ "main.xml": text(`<a ${lines(size, (i) => `b${i}="1"`)}/>`) })],
  "X3P of unclosed elements": ["a.x3p", (size) => zipSync({ "main.xml": text("<a>".repeat(size)) })],
  "X3P of faulty entities": ["a.x3p", (size) => zipSync({ "main.xml": text(`<a>${"&b;".repeat(size)}</a>`) })],
  "X3P of one long text": ["a.x3p", (size) => zipSync({ "main.xml": text(`<a>${"x &amp; ".repeat(size)}</a>`) })],
  "X3P that is cut": ["a.x3p", (size) => x3pFile({ columns: size, rows: 1, raw: points(size) }).slice(0, -30)],
  "SMD of many heights": ["a.smd", (size) => text(smd(`${points(size).join("\r\n")}\r\n`, "1"))],
  "SMD of many records": ["a.smd", (size) => text(smd("", "1\u0003\r\n".repeat(size)))],
  "SMD of many axes": ["a.smd", (size) => text(`${"CX I\r\n".repeat(size)}${smd("", "1")}`)],
  "columns of many points": ["a.csv", (size) => text(`x_mm,z_um\n${lines(size, (i) => `${i},${i % 7}`)}`)],
  "columns of many columns": ["a.csv", (size) => text("1,".repeat(size))],
  "columns of empty lines": ["a.txt", (size) => text(`${"\n".repeat(size)}1 2\n`)],
  "columns under a long heading": ["a.csv", (size) => text(`${"x_".repeat(size)}mm,z_um\n1,2\n`)],
};

test.each(Object.entries(MEASURED))("a measured file: %s", async (_, [name, make]) => {
  await growsEvenly(make, (bytes) => readMeasured(name, bytes, USUAL_TEXT));
});

const TABLES: Readonly<Record<string, (size: number) => string>> = {
  "many rows": (size) => `name,phone,email\n${lines(size, (i) => `Invented ${i},${i},a@b`)}`,
  "many rows of many columns": (size) => {
    const side = Math.floor(Math.sqrt(40 * size));
    return lines(side, (i) => lines(side, (j) => (i === 0 ? `c${j}` : "1")).replaceAll("\n", ","));
  },
  "many columns with one name": (size) => `${"name,".repeat(size)}\n1`,
  "a heading of many columns over many rows": (size) => `${"a,".repeat(size)}\n${lines(size, () => "1")}`,
  "rows of too many cells": (size) => `name\n${"1,".repeat(size)}`,
  "open quotes": (size) => `name\n${lines(size, () => `"a`)}`,
  "doubled quotes": (size) => `name\n"${`""`.repeat(size)}`,
  "quotes at every place": (size) => `name\n${`"a,""b,`.repeat(size)}`,
  "text behind quotes": (size) => `name\n${`"a"b,`.repeat(size)}`,
  "line ends": (size) => `name${"\r\n\r".repeat(size)}a`,
  "empty cells": (size) => `name;phone\n${";\n".repeat(size)}`,
  "words of a state that is not known": (size) => `name,cover\n${lines(size, () => "Grey Heron,unknwon")}`,
};

test.each(Object.entries(TABLES))("a table of %s", async (_, write) => {
  await growsEvenly(write, csvRows);
  for (const kind of ["bowlers", "balls"] as const) await growsEvenly(write, (csv) => readTable(kind, csv, undefined));
});

const bytesOf = (...parts: readonly (string | Uint8Array)[]) =>
  new Uint8Array(Buffer.concat(parts.map((part) => Buffer.from(part as string, "latin1"))));
const repeated = (size: number, part: string | Uint8Array) =>
  Buffer.concat(Array.from({ length: size }, () => Buffer.from(part as string, "latin1")));
const PHOTOS: Readonly<Record<string, (size: number) => Uint8Array>> = {
  "JPEG of many segments": (size) => bytesOf("\xff\xd8", repeated(size, "\xff\xe1\x00\x04ab"), "\xff\xda\x00\x02\xff\xd9"),
  "JPEG of colour profiles": (size) => bytesOf("\xff\xd8", repeated(size, "\xff\xe2\x00\x10ICC_PROFILE\0\0\0"), "\xff\xda\x00\x02\xff\xd9"),
  "JPEG of fill bytes": (size) => bytesOf("\xff\xd8", repeated(10 * size, "\xff")),
  "JPEG of scans": (size) => bytesOf("\xff\xd8", repeated(size, "\xff\xda\x00\x02ab"), "\xff\xd9"),
  "JPEG of restarts": (size) => bytesOf("\xff\xd8\xff\xda\x00\x02", repeated(size, "\xff\xd0"), "\xff\xd9"),
  "PNG of many chunks": (size) => bytesOf("\x89PNG\r\n\x1a\n", repeated(size, pngChunk("tEXt", Buffer.from("a\0b")))),
  "PNG of empty data": (size) =>
    bytesOf("\x89PNG\r\n\x1a\n", repeated(size, pngChunk("IDAT", Buffer.alloc(0))), pngChunk("IEND", Buffer.alloc(0))),
  "WebP of many chunks": (size) => {
    const inside = bytesOf("WEBP", repeated(size, "VP8 \0\0\0\0"));
    const length = Buffer.alloc(4);
    length.writeUInt32LE(inside.length);
    return bytesOf("RIFF", length, inside);
  },
};

test.each(Object.entries(PHOTOS))("a photo: %s", async (_, make) => {
  await growsEvenly(make, photoOf);
});
