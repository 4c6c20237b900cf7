import { API } from "#contract/routes/api";
import { METRICS_TYPE } from "#contract/routes/metrics";
import { openApi } from "#contract/routes/openApi";
import type { Records } from "#records/records";
import type { Handlers } from "./http/mount.ts";
import type { Meter, Present } from "./metrics.ts";
import type { PlanBook } from "./plans/planBook.ts";
import type { QueueBook } from "./queue.ts";
import { accessHandlers } from "./routes/access.ts";
import { ballHandlers } from "./routes/balls.ts";
import { customerHandlers } from "./routes/customers.ts";
import { laneHandlers } from "./routes/lanes.ts";
import { moneyHandlers } from "./routes/money.ts";
import { planHandlers } from "./routes/plans.ts";
import { shopHandlers } from "./routes/shop.ts";
import { workHandlers } from "./routes/work.ts";

export interface ApiParts {
  readonly records: Records;
  readonly plans: PlanBook;
  readonly queue: QueueBook;
  readonly version: string;
  readonly meter: Meter;
  /** What stands now, for the counts. */
  readonly present: () => Omit<Present, "backup">;
  /** Whether the server is about to stop. */
  readonly isClosing: () => boolean;
}

/** What is done for every route of the table. */
export function apiHandlers({ records, plans, queue, version, meter, present, isClosing }: ApiParts): Handlers<typeof API> {
  const description = openApi(API, version) as { openapi: string };
  return {
    async health() {
      await records.health();
      const { data } = await records.settings.get();
      const { lastMadeAt, failed, lostFiles } = await records.backups.state();
      const lastBackup = failed !== null ? "failed" : lastMadeAt === null ? "none" : "good";
      const unreadable = records.unreadable.met().length;
      const state = isClosing() ? "closing" : "well";
      const about = { state, version, invented: data === "invented", mayWrite: records.newerProgram === null } as const;
      return { ...about, lastBackup, lostFiles, unreadable };
    },
    describe: async () => description,
    async metrics() {
      const { lastMadeAt, failed } = await records.backups.state();
      const backup = { lastMadeAt: lastMadeAt === null ? null : Date.parse(lastMadeAt), hasFailed: failed !== null };
      return { bytes: new TextEncoder().encode(meter.text({ ...present(), backup })), type: METRICS_TYPE, name: null };
    },
    ...accessHandlers(records),
    ...customerHandlers(records),
    ...ballHandlers(records),
    ...workHandlers(records, plans, queue),
    ...moneyHandlers(records),
    ...laneHandlers(records),
    ...shopHandlers(records),
    ...planHandlers(plans),
  };
}
