import type { Photo } from "#contract/records/attachment";
import type { Reading } from "#contract/records/reading";
import type { StageDone } from "#contract/records/stageDone";
import { standingReadings } from "#contract/records/standingReadings";
import type { Ticket } from "#contract/records/ticket";
import { everyPage } from "../../shop/everyPage.ts";
import { answered, type ShopFault, shop } from "../../shop/shopClient.ts";
import { usePhotos } from "../../shop/usePhotos.ts";
import { useRead } from "../../shop/useShop.ts";

/** What is kept of a ball beside itself, to the last page. */
export interface BallRecords {
  readonly readings: readonly Reading[];
  readonly tickets: readonly Ticket[];
  readonly photos: readonly Photo[];
  /** Oldest first. */
  readonly stages: readonly StageDone[];
}

/** Null until all of it has been read; why not, where it could not be. */
export function useBallRecords(ballId: string): { readonly records: BallRecords | null; readonly error: ShopFault | null; again(): void } {
  const query = { ballId, limit: "200" } as const;
  const readings = useRead(["readings", "all of", ballId], () =>
    everyPage((after) => answered(shop.readings.$get({ query: { ...query, ...after } }))),
  );
  const tickets = useRead(["tickets", "all of ball", ballId], () =>
    everyPage((after) => answered(shop.tickets.$get({ query: { ...query, ...after } }))),
  );
  const photos = usePhotos({ ballId });
  const stages = useRead(["stages-done", "of ball", ballId], () =>
    answered(shop.balls[":id"]["stages-done"].$get({ param: { id: ballId } })),
  );
  const reads = [readings, tickets, photos, stages];
  const isRead = readings.data !== undefined && tickets.data !== undefined && photos.data !== undefined && stages.data !== undefined;
  return {
    records: isRead
      ? { readings: standingReadings(readings.data), tickets: tickets.data, photos: photos.data, stages: stages.data.items }
      : null,
    error: reads.find(({ error, data }) => error !== null && data === undefined)?.error ?? null,
    again: () => {
      for (const read of reads) void read.refetch();
    },
  };
}

/** What may be changed of a ball. */
export type BallChange = Parameters<(typeof shop.balls)[":id"]["$patch"]>[0]["json"];
