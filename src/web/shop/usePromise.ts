import { useQueries } from "@tanstack/react-query";
import { benchFreeFrom, benchSecondsOf, promiseFor, restSecondsOf, USUAL_OPENINGS } from "#contract/records/promise";
import { answered, shop } from "./shopClient.ts";
import { useQueue } from "./useQueue.ts";
import { useSettings } from "./zone.ts";

const USUAL_BALLS_PER_HOUR = 3;

/**
 * When balls that are taken in now can be promised for.
 *
 * @param balls of the visit; where a ball is worked as last time, its id
 */
export function usePromise(balls: readonly (string | null)[]) {
  const settings = useSettings().data;
  const ballsPerHour = settings?.ballsPerHour ?? USUAL_BALLS_PER_HOUR;
  const tickets = (useQueue().data?.items ?? []).map(({ ticket }) => ticket);
  const waiting = tickets.filter(({ state }) => state !== "ready" && state !== "uncollected");
  const ids = [...new Set(balls.filter((id) => id !== null))];
  const lasts = useQueries({
    queries: ids.map((id) => ({
      queryKey: ["tickets", "last", id],
      queryFn: () => answered(shop.balls[":id"]["last-time"].$get({ param: { id } })),
      networkMode: "always" as const,
    })),
  });
  const own = balls.map((id) => (id === null ? null : lasts[ids.indexOf(id)].data?.last?.ticket.stages) ?? []);
  const restSeconds = Math.max(0, ...own.map(restSecondsOf));
  const openings = settings?.openings ?? null;
  const queue = {
    nowMs: Date.now(),
    zone: settings?.zone ?? "UTC",
    openings: openings ?? USUAL_OPENINGS,
    waitingSeconds: waiting.reduce((sum, { stages }) => sum + benchSecondsOf(stages, ballsPerHour), 0),
  };
  const at = promiseFor({
    ...queue,
    ownSeconds: own.reduce((sum, stages) => sum + benchSecondsOf(stages, ballsPerHour), 0),
    restSeconds,
  });
  return {
    at,
    freeFrom: benchFreeFrom(queue),
    waiting: waiting.length,
    ballsPerHour,
    restHours: restSeconds / 3600,
    isUsual: openings === null,
  };
}
