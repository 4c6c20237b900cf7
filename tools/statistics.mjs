/**
 * `npm run statistics`: the tests whose statement is a share of many runs, with as many as the share wants; the gate runs fewer, with wider bounds. A quarter of
 * an hour or so.
 */
import { ensureInstalled, runTool } from "./setup.mjs";

await ensureInstalled();
process.exitCode = await runTool(
  "vitest",
  "vitest",
  ["run", "test/learning/house.test.ts", "test/records/durability.test.ts", "test/video/shots.test.ts"],
  {
    HOUSES: "200",
    LEARNERS: "20",
    SHARED: "20",
    KILLS: "200",
    CUTS: "60",
    VIDEO_SHOTS: "300",
  },
);
