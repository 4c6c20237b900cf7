import { aboutRoutes } from "./about.ts";
import { accessRoutes } from "./access.ts";
import { ballRoutes } from "./balls.ts";
import { customerRoutes } from "./customers.ts";
import { laneRoutes } from "./lanes.ts";
import { metricsRoutes } from "./metrics.ts";
import { moneyRoutes } from "./money.ts";
import { planRoutes } from "./plans.ts";
import { shopRoutes } from "./shop.ts";
import { workRoutes } from "./work.ts";

/** Every route there is. */
export const API = {
  ...aboutRoutes,
  ...accessRoutes,
  ...customerRoutes,
  ...ballRoutes,
  ...workRoutes,
  ...moneyRoutes,
  ...laneRoutes,
  ...shopRoutes,
  ...planRoutes,
  ...metricsRoutes,
};
