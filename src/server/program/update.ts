import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { PlacedConfig } from "../config/configSchema.ts";
import type { ShopParts } from "../openShop.ts";
import { SHOP_FOLDERS } from "../place/whichFolder.ts";
import { inspected, NoUpdate } from "./inspect.ts";
import { backedUp, rehearsed } from "./rehearse.ts";
import { type Install, removeOthers, staged } from "./stage.ts";
import { type ProgramState, readState, stateOf, writeState } from "./state.ts";
import { WELL_WITHIN_MS } from "./wellness.ts";

const LOOK_EVERY_MS = 500;
/** How much longer than the trial itself its end is waited for, ms: the service stops and starts meanwhile. */
const AROUND_MS = 30_000;

export interface UpdateParts {
  /** Folder of the versions. */
  readonly folder: string;
  /** Folder of this very program. */
  readonly root: string;
  readonly config: PlacedConfig;
  readonly shop: ShopParts;
  readonly install: Install;
  /** Starts the service again, where there is one. */
  readonly restart: (() => Promise<void>) | null;
  readonly say: (words: string) => void;
  readonly mostMs?: number;
}

/**
 * Brings in a newer version: looks into the file, installs it beside this one, backs the shop up, tries it on a copy of the shop, and only then on the shop
 * itself, watched; where it is not well, this one goes on. Cut at any point, this one goes on too.
 *
 * @throws {NoUpdate} where nothing has changed
 */
export async function update(file: string, parts: UpdateParts): Promise<void> {
  const { folder, root, config, shop, say, mostMs = WELL_WITHIN_MS } = parts;
  const found = await inspected(file, process.versions.node);
  say(`Version ${found.version}, sha256 ${found.sha256}`);
  const state = stateOf(folder, root);
  removeOthers(folder, state, root);
  const program = await staged(folder, file, found, parts.install);
  if (state.current?.root === program.root)
    throw new NoUpdate(`Version ${program.version} of this file runs already. Nothing has changed.`);
  const hasShop = config.database !== null || existsSync(join(config.data, SHOP_FOLDERS.own));
  const backup = hasShop ? await backedUp(config, shop) : null;
  if (backup !== null) say(`Backup made: ${backup}`);
  await rehearsed(program, { backup, folder: join(folder, "rehearsal"), parts: shop, mostMs });
  say("Tried on a copy of the shop: it serves well.");
  writeState(folder, { ...state, trial: program, last: null });
  if (parts.restart === null) {
    say(`The next start of gritwright serve is with ${program.version}, and goes back by itself where it is not well within a minute.`);
    return;
  }
  await parts.restart();
  await outcome(folder, state, program.version, mostMs + AROUND_MS);
  say(`Version ${program.version} serves the shop.`);
}

/** Waits until the service has ended its trial. @throws {NoUpdate} where the one before goes on */
async function outcome(folder: string, { over }: ProgramState, version: string, mostMs: number): Promise<void> {
  for (const until = performance.now() + mostMs; performance.now() < until; await sleep(LOOK_EVERY_MS)) {
    const last = readState(folder, over.root)?.last ?? null;
    if (last === null || last.version !== version) continue;
    if (last.isWell) return;
    throw new NoUpdate(`Version ${version} ${last.why}. The version before serves again.`, "the version");
  }
  throw new NoUpdate(
    `The service did not say in time how version ${version} does. Look at it: it goes back by itself where it is not well.`,
    "the version",
  );
}

/** What the service is started with, where there is one: an update is of its shop. */
export function argumentsOfService(note: string): string[] | null {
  if (!existsSync(note)) return null;
  const { args } = JSON.parse(readFileSync(note, "utf8")) as { args: string[] };
  return args.filter((word) => word !== "serve");
}
