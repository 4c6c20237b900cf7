import type { Drill } from "./drill.ts";
import { backupUnderWrites } from "./drills/backupUnderWrites.ts";
import { damagedBackups } from "./drills/damagedBackups.ts";
import { folderTakenAway } from "./drills/folderTakenAway.ts";
import { fullDisk } from "./drills/fullDisk.ts";
import { killWhileWriting } from "./drills/killWhileWriting.ts";
import { postgresRestarts } from "./drills/postgresRestarts.ts";
import { routesByRole } from "./drills/routesByRole.ts";

/** In the order of the table. */
export const DRILLS: readonly Drill[] = [
  killWhileWriting,
  postgresRestarts,
  fullDisk,
  folderTakenAway,
  backupUnderWrites,
  damagedBackups,
  routesByRole,
];
