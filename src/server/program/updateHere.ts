import { join } from "node:path";
import { JobFault } from "#contract/problem";
import { RecordsFault } from "#contract/records/fault";
import { RECORDS_FAULT } from "#words/en/records";
import { problemText } from "#words/problemText";
import { readConfig } from "../config/readConfig.ts";
import { placed } from "../place/placed.ts";
import { placeHere } from "../place/placeHere.ts";
import { SERVICE_NOTE, serviceHere } from "../service/asService.ts";
import { NoService, runAll, runHere } from "../service/installService.ts";
import { shopPartsHere } from "../shopPartsHere.ts";
import { NoUpdate } from "./inspect.ts";
import { installWithNpm } from "./stage.ts";
import { OWN_ROOT, programsFolder } from "./state.ts";
import { argumentsOfService, update } from "./update.ts";

/**
 * `gritwright update FILE.tgz`, with the options of `serve` where the shop is not the service's or the usual one.
 *
 * @returns 0 where the new version serves or is to serve, 1 our fault, 2 where the file cannot be used, 3 where the new version is not well
 */
export async function updateHere(args: readonly string[]): Promise<0 | 1 | 2 | 3> {
  const [file, ...options] = args;
  try {
    if (file === undefined || file.startsWith("-")) throw new NoUpdate("Which file? gritwright update FILE.tgz, as npm pack makes it.");
    const note = argumentsOfService(join(programsFolder(), "..", SERVICE_NOTE));
    const config = await placed(
      readConfig(options.length > 0 ? options : (note ?? ["--own"]), process.env),
      placeHere(async () => false),
    );
    const restart = () =>
      runAll(serviceHere([]).restart, runHere, "The new version was tried on a copy and is well, but the service did not start again.");
    await update(file, {
      folder: programsFolder(),
      root: OWN_ROOT,
      config,
      shop: shopPartsHere(),
      install: installWithNpm,
      restart: note === null ? null : restart,
      say: (words) => console.log(words),
    });
    return 0;
  } catch (error) {
    console.error(textOf(error));
    if (error instanceof NoUpdate) return error.isSick ? 3 : 2;
    return error instanceof JobFault || error instanceof RecordsFault ? 2 : 1;
  }
}

function textOf(error: unknown): string {
  if (error instanceof JobFault) return error.problems.map(problemText).join("\n");
  if (error instanceof RecordsFault) return `${RECORDS_FAULT[error.kind](error.about)} Nothing has changed.`;
  if (error instanceof NoUpdate || error instanceof NoService) return error.message;
  return `Something of ours broke: ${error instanceof Error ? error.message : String(error)}`;
}
