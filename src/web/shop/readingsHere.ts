import type { Reading, ReadingWritten } from "#contract/records/reading";
import { standingReadings } from "#contract/records/standingReadings";
import { everyPage } from "./everyPage.ts";
import type { Waiting } from "./outbox.ts";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** What is known of a reading, also while it waits in a browser and the shop has not got it yet. */
export type ReadingHere = Pick<Reading, "id" | "at" | "when" | "place" | "how" | "raUm" | "comparison" | "ticketId" | "takesBack"> & {
  readonly ballId: string;
  /** When the shop was told; null while it waits. */
  readonly createdAt: string | null;
};

/** Where the readings of a ball lie in this browser's memory. */
export const readingsKey = (ballId: string) => ["readings", "here", ballId] as const;

/** A reading as a write of this browser says it, until it has been read from the shop; null for any other write. */
export function readingHere({ key, path, body }: Pick<Waiting, "key" | "path" | "body">): ReadingHere | null {
  if (path !== "/api/readings") return null;
  const written = body as ReadingWritten;
  return {
    id: key,
    ballId: written.ballId,
    ticketId: written.ticketId ?? null,
    at: written.at,
    when: written.when,
    place: written.place,
    how: written.how,
    raUm: written.raUm ?? null,
    comparison: written.comparison ?? null,
    takesBack: written.takesBack ?? null,
    createdAt: null,
  };
}

/** All readings of a ball, for rooms that write some down. */
export function useReadingsOf(ballId: string) {
  return useRead<readonly ReadingHere[]>(readingsKey(ballId), () =>
    everyPage((after) => answered(shop.readings.$get({ query: { ballId, limit: "200", ...after } }))),
  );
}

/** Those that stand, with what this browser has written down and the shop has not got yet. */
export function readingsThatStand(read: readonly ReadingHere[], ballId: string, waiting: readonly Waiting[]): readonly ReadingHere[] {
  const unsent = waiting.flatMap((write) => {
    const one = write.refused === null ? readingHere(write) : null;
    return one === null || one.ballId !== ballId || read.some(({ id }) => id === one.id) ? [] : [one];
  });
  return standingReadings([...read, ...unsent]);
}
