import type { Photo } from "#contract/records/attachment";
import type { Ball } from "#contract/records/ball";
import type { Reading } from "#contract/records/reading";
import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import type { BallRecords } from "./useBallRecords.ts";

/** One thing that happened to a ball, as its record holds it. */
export type BallMoment =
  | { readonly kind: "surface"; readonly at: string; readonly of: Ball["surface"][number] }
  | { readonly kind: "games"; readonly at: string; readonly of: Ball["games"][number] }
  | { readonly kind: "found"; readonly at: string; readonly of: Ball["found"][number] }
  | { readonly kind: "reading"; readonly at: string; readonly of: Reading }
  | { readonly kind: "stage"; readonly at: string; readonly of: StageDone }
  | { readonly kind: "photo"; readonly at: string; readonly of: Photo }
  | { readonly kind: "ticket"; readonly at: string; readonly of: Ticket };

/** Everything that is kept of a ball, latest first; a ticket stands at the time it was received, a photo at the time it was taken, or kept where nobody knows. */
export function ballTimeline(ball: Ball, { readings, tickets, photos, stages }: BallRecords): readonly BallMoment[] {
  const moments: readonly BallMoment[] = [
    ...tickets.map((of): BallMoment => ({ kind: "ticket", at: of.receivedAt, of })),
    ...ball.found.map((of): BallMoment => ({ kind: "found", at: of.at, of })),
    ...ball.surface.map((of): BallMoment => ({ kind: "surface", at: of.at, of })),
    // Single sides are part of the stage that is then signed.
    ...stages.filter(({ signs, takesBack }) => signs || takesBack !== null).map((of): BallMoment => ({ kind: "stage", at: of.doneAt, of })),
    ...readings.map((of): BallMoment => ({ kind: "reading", at: of.at, of })),
    ...photos.map((of): BallMoment => ({ kind: "photo", at: of.takenAt ?? of.createdAt, of })),
    ...ball.games.map((of): BallMoment => ({ kind: "games", at: of.at, of })),
  ];
  return moments.toSorted((a, b) => b.at.localeCompare(a.at));
}
