import type { Drill } from "./drill.ts";
import { killWhileWriting } from "./drills/killWhileWriting.ts";
import { postgresRestarts } from "./drills/postgresRestarts.ts";
import { routesByRole } from "./drills/routesByRole.ts";

/** In the order of the table. */
export const DRILLS: readonly Drill[] = [killWhileWriting, postgresRestarts, routesByRole];
