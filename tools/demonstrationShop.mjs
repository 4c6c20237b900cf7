/**
 * The invented shop for tests in a browser: made once for a build, a copy of it for each server. Made anew it takes seven seconds of a processor.
 */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { newestChange, ROOT } from "./setup.mjs";

const PLACE = join(ROOT, "dist", ".demonstrations");
/** As the server has it where nothing is said. */
const SEED = 1;

/** Lays the invented shop of today into a server's folder, where there is none yet. @param {string} data the folder that `--data` names */
export async function layDownDemonstration(data) {
  const folder = join(data, "demonstration");
  if (existsSync(folder)) return;
  mkdirSync(data, { recursive: true });
  cpSync(await made(), folder, { recursive: true });
}

/** @returns {Promise<string>} folder of the shop; whoever makes it at the same time makes the same */
async function made() {
  const today = new Date().toISOString().slice(0, 10);
  const built = Math.round(Math.max(...["records", "contract", "engine"].map((floor) => newestChange(join(ROOT, "dist", floor)))));
  const folder = join(PLACE, `${today}-${built}`);
  if (existsSync(folder)) return folder;
  mkdirSync(PLACE, { recursive: true });
  for (const old of readdirSync(PLACE)) if (!old.startsWith("making-")) rmSync(join(PLACE, old), { recursive: true, force: true });
  const making = mkdtempSync(join(PLACE, "making-"));
  const { makeDemonstration } = await import(pathToFileURL(join(ROOT, "dist", "records", "demonstration", "makeDemonstration.js")).href);
  await makeDemonstration({ folder: join(making, "shop"), seed: SEED, today, programVersion: "0.0.0-test", say: () => {} });
  if (!existsSync(folder)) renameSync(join(making, "shop"), folder);
  rmSync(making, { recursive: true, force: true });
  return folder;
}
