import { basename } from "node:path";
import { profileChart } from "#drawing/profileChart";
import { assume } from "#engine/assumptions";
import { effectiveRaOfReadingUm } from "#engine/surface/finish";
import { type Areal, arealFigures } from "#engine/surface/roughness/areal";
import { type Measured, measureRoughness } from "#engine/surface/roughness/measure";
import { MICROINCH, MICROMETRE } from "#engine/units";
import { readMeasured } from "#exchange/measured/measuredFile";
import { PROFILE } from "#words/en/measuring";
import { fixed } from "#words/figures";
import type { Options } from "./options.ts";
import { readMeasuredBytes } from "./readJob.ts";
import { textColumns } from "./textTable.ts";
import type { ExitCode, World } from "./world.ts";
import { writePicture } from "./writePicture.ts";

type Document = { readonly file: string } & ((Omit<Measured, "drawn"> & { readonly checksumModulo?: number }) | Areal);

/** What comes in has no name whose ending says what it is: a ZIP is an X3P, an SMD begins with its standard, and the rest is columns. */
function nameOf(bytes: Uint8Array): string {
  const start = new TextDecoder("latin1").decode(bytes.subarray(0, 64));
  if (start.startsWith("PK")) return "-.x3p";
  return /^\s*ISO 5436/.test(start) ? "-.smd" : "-.csv";
}

/** `gritwright profile FILE…`: roughness from measured files. One file is one document, several are a list; the picture is of the first profile. */
export async function profile(files: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const documents: Document[] = [];
  let pictured = false;
  for (const file of files) {
    const bytes = await readMeasuredBytes(file);
    const found = readMeasured(file === "-" ? nameOf(bytes) : file, bytes, options.text);
    if (found.kind === "areal") {
      documents.push({ file: basename(file), ...arealFigures(found.um) });
      continue;
    }
    const { drawn, ...figures } = measureRoughness(found.profile, options.measure);
    const sum = found.checksumModulo === null ? {} : { checksumModulo: found.checksumModulo };
    documents.push({ file: basename(file), ...figures, ...sum });
    if (options.svg !== null && !pictured) {
      pictured = true;
      await writePicture(
        options.svg,
        profileChart({
          name: basename(file),
          ...drawn,
          spacingMm: found.profile.spacingMm,
          raUm: figures.raUm,
          cutoffMm: figures.cutoffMm,
          figures: oneLine(figures),
        }),
        world,
      );
    }
  }
  world.print(
    options.json
      ? `${JSON.stringify(documents.length === 1 ? documents[0] : documents, null, 2)}\n`
      : `${documents.map(report).join("\n\n")}\n`,
  );
  return 0;
}

function oneLine(figures: Omit<Measured, "drawn">): string {
  return `Ra ${fixed(figures.raUm, 3)}  Rq ${fixed(figures.rqUm, 3)}  Rz ${fixed(figures.rzUm, 3)} µm   ${PROFILE.short(figures.cutoffMm, figures.evaluationMm)}`;
}

function report(document: Document): string {
  if ("saUm" in document) {
    return [
      document.file,
      `  ${PROFILE.areal}`,
      `  Sa ${fixed(document.saUm, 4)} µm, Sq ${fixed(document.sqUm, 4)} µm, mean ${fixed(document.meanUm, 4)} µm`,
      `  ${PROFILE.points(document.points, document.missing)}`,
    ].join("\n");
  }
  const raMicroinch = (document.raUm * MICROMETRE) / MICROINCH;
  const rows: [string, number | null, string][] = [
    ["Ra", document.raUm, "µm"],
    ["Rq", document.rqUm, "µm"],
    ["Rz", document.rzUm, "µm"],
    ["Rt", document.rtUm, "µm"],
    ["Rp", document.rpUm, "µm"],
    ["Rv", document.rvUm, "µm"],
    ["Rsk", document.rsk, ""],
    ["Rku", document.rku, ""],
    ["RSm", document.rsmMm, "mm"],
    ["Rdq", document.rdq, ""],
    ["Rk", document.rkUm, "µm"],
    ["Rpk", document.rpkUm, "µm"],
    ["Rvk", document.rvkUm, "µm"],
    ["Mr1", document.mr1Pct, "%"],
    ["Mr2", document.mr2Pct, "%"],
  ];
  return [
    document.file,
    `  ${PROFILE.evaluated(document.cutoffMm, PROFILE.cutoffBy[document.cutoffBy], document.samplingLengths, document.evaluationMm)}, ${PROFILE.points(document.points, document.missing)}`,
    ...(document.checksumModulo === undefined ? [] : [`  ${PROFILE.checksum(document.checksumModulo)}`]),
    ...textColumns([
      { align: "left", cells: rows.map(([name]) => `  ${name}`) },
      { align: "right", cells: rows.map(([, value]) => (value === null ? "–" : fixed(value, 4))) },
      { align: "left", cells: rows.map(([name, , unit]) => (name === "Ra" ? `${unit} (${fixed(raMicroinch, 1)} µin)` : unit)) },
    ]),
    `  ${PROFILE.effective(effectiveRaOfReadingUm(raMicroinch, assume()))}`,
  ].join("\n");
}
