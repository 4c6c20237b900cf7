import { existsSync } from "node:fs";
import { mkdir, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { deriveSeed } from "#engine/random";
import { openRecords } from "../openRecords.ts";
import { makeCustomers } from "./customers.ts";
import { dice } from "./dice.ts";
import { furnish } from "./furnish.ts";
import { countGames } from "./games.ts";
import { DAY, HOUR, shopClock } from "./shopClock.ts";
import { tellStory } from "./story.ts";

export interface DemonstrationOptions {
  /** Folder of the invented shop; what is there already is left as it is. */
  readonly folder: string;
  /** 0–4294967295; the same seed and day make the same shop to the last byte of its export. */
  readonly seed: number;
  /** The day on which the two years end, 2026-05-31. */
  readonly today: string;
  readonly programVersion: string;
  /** Takes a sentence for the person who waits. */
  readonly say: (words: string) => void;
}

const YEARS_DAYS = 730;
const DICE_STREAM = 1;
const ID_STREAM = 2;

/**
 * Makes an invented shop: forty bowlers, a hundred and twenty balls, two years of visits. It is made beside its folder and put there when it is
 * whole, so that a power cut leaves none rather than half of one.
 *
 * @throws {RecordsFault} as the records do: a full disk, a folder that cannot be written
 */
export async function makeDemonstration({ folder, seed, today, programVersion, say }: DemonstrationOptions): Promise<void> {
  if (existsSync(folder)) return;
  say("Making the demonstration shop: invented people, balls and visits …");
  const making = `${folder}.making`;
  await rm(making, { recursive: true, force: true });
  await mkdir(dirname(folder), { recursive: true });
  const endMs = Date.parse(`${today}T00:00:00.000Z`);
  const beginMs = endMs - YEARS_DAYS * DAY;
  const clock = shopClock(beginMs);
  const records = await openRecords({
    folder: making,
    now: clock.now,
    randomBytes: bytesFrom(deriveSeed(seed, ID_STREAM)),
    programVersion,
  });
  try {
    const { items } = await records.people.list({ order: "oldest first", limit: 1 });
    const [{ id: by }] = items;
    // One transaction: thousands of writes wait for the disk once.
    await records.together({ by }, async (things) => {
      const making = { things, clock, dice: dice(deriveSeed(seed, DICE_STREAM)), by, beginMs, endMs };
      const shop = await furnish(making);
      const customers = await makeCustomers(making);
      await tellStory(making, shop, customers);
      // Last week's league has told how much was bowled.
      clock.at(endMs - HOUR);
      for (const ball of customers.flatMap(({ balls }) => balls)) await countGames(making, ball);
    });
  } finally {
    await records.close();
  }
  await rename(making, folder);
}

function bytesFrom(seed: number): (count: number) => Uint8Array {
  const { whole } = dice(seed);
  return (count) => Uint8Array.from({ length: count }, () => whole(0, 255));
}
