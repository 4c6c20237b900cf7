import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { JobFault, MEASURED_FAULTS } from "#contract/problem";
import { arealFigures } from "#engine/surface/roughness/areal";
import { readMeasured } from "#exchange/measured/measuredFile";
import { USUAL_TEXT } from "#exchange/measured/profileText";
import { MEASURED_SENTENCES } from "#words/en/problems";
import { type SmdParts, smdFile, x3pFile } from "./measuredFiles.ts";

const text = (value: string) => new TextEncoder().encode(value);
const csv = (value: string, options = USUAL_TEXT) => readMeasured("x.csv", text(value), options);
const x3p = (bytes: Uint8Array) => readMeasured("x.x3p", bytes, USUAL_TEXT);

/** What went wrong, by the fault's own word. */
function fault(work: () => unknown): string {
  try {
    work();
  } catch (thrown) {
    if (thrown instanceof JobFault) return String(thrown.problems[0].reason.params.what);
    throw thrown;
  }
  return "nothing";
}

function profileOf(found: ReturnType<typeof readMeasured>) {
  if (found.kind !== "profile") throw new Error("no profile");
  return found.profile;
}

describe("X3P (ISO 25178-72: little-endian, x fastest, metres, value = offset + n · increment, validity bits lowest first)", () => {
  const raw = [1, 2, null, 4, 5, 6, 7, null, 9, 10];

  it.each(["I", "L", "F", "D"] as const)("reads a binary profile of type %s with its missing points", (zType) => {
    const { um, spacingMm } = profileOf(
      x3p(x3pFile({ columns: 10, rows: 1, zType, increment: 1e-7, offset: 2e-6, spacingM: 2e-6, raw, binary: true })),
    );
    expect(spacingMm).toBeCloseTo(0.002, 12);
    raw.forEach((n, i) => {
      if (n === null) expect(um[i]).toBeNaN();
      else expect(um[i]).toBeCloseTo(2 + 0.1 * n, 6);
    });
  });

  it("reads points listed in main.xml, and an area's mean, Sq and Sa", () => {
    const found = x3p(x3pFile({ columns: 3, rows: 2, raw: [1e-6, 2e-6, 3e-6, null, 4e-6, 5e-6] }));
    if (found.kind !== "areal") throw new Error("no area");
    const figures = arealFigures(found.um);
    expect(figures.points).toBe(5);
    expect(figures.missing).toBe(1);
    expect(figures.meanUm).toBeCloseTo(3, 9);
    expect(figures.sqUm).toBeCloseTo(Math.sqrt(2), 9);
    expect(figures.saUm).toBeCloseTo(1.2, 9);
  });

  it.each([
    ["not a ZIP", () => x3p(text("hello")), "notZip"],
    ["cut short", () => x3p(x3pFile({ columns: 10, rows: 1, raw, binary: true }).slice(0, 300)), "damaged"],
    ["no main.xml", () => x3p(zipSync({ "other.xml": text("x") })), "noMainXml"],
    ["wrong checksum of main.xml", () => x3p(x3pFile({ columns: 2, rows: 1, raw: [1, 2], sums: { main: "0".repeat(32) } })), "checksum"],
    [
      "wrong checksum of the points",
      () => x3p(x3pFile({ columns: 2, rows: 1, raw: [1, 2], binary: true, sums: { data: "f".repeat(32) } })),
      "checksum",
    ],
    ["fewer points than stated", () => x3p(x3pFile({ columns: 5, rows: 1, raw: [1, 2] })), "size"],
    ["several layers", () => x3p(x3pFile({ columns: 1, rows: 1, layers: 2, raw: [1] })), "layers"],
    ["an absurd size", () => x3p(x3pFile({ columns: 1e9, rows: 1e9, raw: [1] })), "size"],
    [
      "entities that grow",
      () => x3p(x3pFile({ columns: 1, rows: 1, raw: [1], prologue: '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>' })),
      "doctype",
    ],
    [
      "more entries than any",
      () =>
        x3p(
          x3pFile({ columns: 1, rows: 1, raw: [1], extra: Object.fromEntries(Array.from({ length: 80 }, (_, i) => [`e${i}`, text("x")])) }),
        ),
      "tooManyEntries",
    ],
    ["no point measured", () => x3p(x3pFile({ columns: 2, rows: 1, raw: [null, null] })), "noPoints"],
    ["a data type that only programs know", () => x3p(x3pFile({ columns: 1, rows: 1, raw: [1], zType: "constructor" as "D" })), "axis"],
    ["an increment below nought", () => x3p(x3pFile({ columns: 2, rows: 1, raw: [1, 2], increment: -1 })), "axis"],
    ["heights that an increment makes endless", () => x3p(x3pFile({ columns: 2, rows: 1, raw: [1e200, 2], increment: 1e200 })), "height"],
  ] as const)("refuses %s", (_name, work, what) => {
    expect(fault(work)).toBe(what);
  });

  it("does not unpack an entry that would grow without bound", () => {
    const bomb = zipSync({ "main.xml": new Uint8Array(60_000_000) }, { level: 9 });
    // The stated size is raised to what a real bomb would claim: the central directory and the local header both carry it.
    const claims = bomb.slice();
    const view = new DataView(claims.buffer, claims.byteOffset);
    for (let i = 0; i + 4 < claims.length; i++) if (view.getUint32(i, true) === 60_000_000) view.setUint32(i, 4_000_000_000, true);
    expect(fault(() => x3p(claims))).toBe("tooLarge");
  });
});

describe("text with columns", () => {
  it("reads the units from the heading, remarks, missing heights, semicolons with decimal commas", () => {
    const found = profileOf(csv("# invented\nx [um];z [nm]\n0;100,5\n2;\n4;nan\n6;-50\n"));
    expect(found.spacingMm).toBeCloseTo(0.002, 12);
    expect([...found.um].map((z) => (Number.isNaN(z) ? null : Number(z.toFixed(6))))).toEqual([0.1005, null, null, -0.05]);
  });

  it("takes mm and µm where no heading says, or what is asked for", () => {
    expect(profileOf(csv("0,1\n0.5,2\n1,3\n"))).toEqual({ um: Float64Array.of(1, 2, 3), spacingMm: 0.5 });
    expect(profileOf(csv("0 1\n1 2\n", { xUnit: "um", zUnit: "nm" })).um[1]).toBeCloseTo(0.002, 12);
  });

  it.each([
    ["three columns", "0,1,2\n1,2,3\n", "columns"],
    ["an unknown unit", "x_furlong,z_um\n0,1\n1,2\n", "unit"],
    ["a word for a height", "0,1\n1,deep\n", "notANumber"],
    ["uneven distances", "0,1\n1,1\n2,1\n9,1\n", "uneven"],
    ["distances that go back", "0,1\n1,1\n0.5,1\n", "uneven"],
    ["nothing", "", "noPoints"],
    ["a unit that only programs know", "x_constructor,z_um\n0,1\n1,2\n", "unit"],
    ["a height without end", "0,1\n1,Infinity\n", "notANumber"],
    ["heights higher than any ball", "x_mm,z_m\n0,1e300\n1,2\n", "height"],
  ] as const)("refuses %s", (_name, content, what) => {
    expect(fault(() => csv(content))).toBe(what);
  });
});

describe("SMD (ISO 5436-2: records ended by 03 CR LF, text strings by NUL, byte sum modulo 65536, 1A at the end)", () => {
  const smd = (parts: Partial<SmdParts>) =>
    readMeasured("x.smd", smdFile({ heights: [0.5, -0.25, 1], spacingMm: 0.001, ...parts }), USUAL_TEXT);

  it.each([
    ["as the standard has it", {}],
    ["without NUL, as written by hand", { nul: false }],
    ["with a line end behind the end mark, as instruments write it", { end: "\u001a\r\n" }],
    ["in another length unit and scale", { unit: "nm", scale: "1.0e3" }],
  ])("reads heights and spacing %s", (_, parts) => {
    const { um, spacingMm } = profileOf(smd(parts));
    for (const [i, height] of [0.5, -0.25, 1].entries()) expect(um[i]).toBeCloseTo(height, 12);
    expect(spacingMm).toBeCloseTo(0.001, 12);
  });

  // Long enough that the byte sum passes 65535, where the two ways part.
  const many = Array.from({ length: 400 }, (_, i) => (i % 17) / 100);
  it.each([65536, 65535])("takes a byte sum modulo %s, and says which", (modulo) => {
    expect(smd({ heights: many, modulo })).toMatchObject({ kind: "profile", checksumModulo: modulo });
  });

  it.each([
    ["a wrong checksum", { checksumOff: 1 }, "checksum"],
    ["a height without end", { heights: [1, "1e999", 2] }, "notANumber"],
    ["heights that a scale makes endless", { heights: [1, 2], scale: "1e308" }, "height"],
    ["a scale below nought", { scale: "-1" }, "axis"],
    ["a scale of nought", { scale: "0" }, "axis"],
    ["a unit that only programs know", { unit: "constructor" }, "unit"],
    ["a spacing of nought", { spacingMm: 0 }, "axis"],
    ["only points that are bad", { heights: ["BAD", "BAD"] }, "noPoints"],
  ] as const)("refuses %s", (_, parts, what) => {
    expect(fault(() => smd(parts))).toBe(what);
  });

  it("refuses a file without its records", () => {
    expect(fault(() => readMeasured("x.smd", text("ISO 5436"), USUAL_TEXT))).toBe("records");
  });
});

it("a file of another kind is refused by its ending", () => {
  expect(fault(() => readMeasured("x.docx", text("x"), USUAL_TEXT))).toBe("kind");
});

it("every fault of a measured file has its sentence, and no sentence is left over", () => {
  expect(Object.keys(MEASURED_SENTENCES).sort()).toEqual([...MEASURED_FAULTS].sort());
});
