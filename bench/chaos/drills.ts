import type { Drill } from "./drill.ts";
import { backupUnderWrites } from "./drills/backupUnderWrites.ts";
import { damagedBackups } from "./drills/damagedBackups.ts";
import { folderTakenAway } from "./drills/folderTakenAway.ts";
import { fullDisk } from "./drills/fullDisk.ts";
import { hostileBodies } from "./drills/hostileBodies.ts";
import { killWhileWriting } from "./drills/killWhileWriting.ts";
import { lockAndClock } from "./drills/lockAndClock.ts";
import { postgresRestarts } from "./drills/postgresRestarts.ts";
import { routesByRole } from "./drills/routesByRole.ts";
import { slowSenders } from "./drills/slowSenders.ts";
import { twoServers } from "./drills/twoServers.ts";

/** In the order of the table. */
export const DRILLS: readonly Drill[] = [
  killWhileWriting,
  postgresRestarts,
  twoServers,
  lockAndClock,
  fullDisk,
  folderTakenAway,
  backupUnderWrites,
  damagedBackups,
  hostileBodies,
  slowSenders,
  routesByRole,
];
