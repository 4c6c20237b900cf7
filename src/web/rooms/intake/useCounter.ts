import { useQueryClient } from "@tanstack/react-query";
import type { Ball } from "#contract/records/ball";
import { answered, shop } from "../../shop/shopClient.ts";
import { useWrite } from "../../shop/useShop.ts";
import { takeIn } from "./takeIn.ts";
import { lastTimeQuery } from "./useStagesOf.ts";
import { type BallDraft, changedBall, emptyVisit, knownBowler, mustStop, type VisitDraft, withKnownBall } from "./visitDraft.ts";

export type Change = (next: (old: VisitDraft) => VisitDraft) => void;

/** A ball of the shop comes to the counter, and its owner with it. */
export function useTakeBall(change: Change): (ball: Ball) => void {
  return async (ball) => {
    const { bowlerId } = ball;
    change((old) => {
      const next = withKnownBall(old, ball);
      return bowlerId === null || old.bowler !== null ? next : { ...next, bowler: { id: bowlerId, name: "…", phone: "" } };
    });
    if (bowlerId === null) return;
    const owner = await answered(shop.bowlers[":id"].$get({ param: { id: bowlerId } })).catch(() => null);
    // The form may be about somebody else by now; whose ball it is stands there without a name too.
    if (owner !== null) change((old) => (old.bowler?.id === owner.id ? { ...old, bowler: knownBowler(owner) } : old));
  };
}

interface Sent {
  readonly promisedFor: string;
  readonly prices: Parameters<typeof takeIn>[0]["prices"];
  readonly currency: string;
  readonly taxMillipercent: number;
}

/** Keeps the visit; pressed again after a fault it goes on where it was. */
export function useSend(draft: VisitDraft, change: Change, { promisedFor, ...rest }: Sent) {
  return useWrite(
    async (_: "print" | "plan") => {
      const sent = draft.sent ?? { at: new Date().toISOString(), promisedFor };
      // The form may be emptied meanwhile, and be about another visit.
      const ofThis: Change = (next) => change((old) => (old.key === draft.key ? next(old) : old));
      ofThis((old) => ({ ...old, sent }));
      const onKept = (part: string, id: string) => ofThis((old) => ({ ...old, kept: { ...old.kept, [part]: id } }));
      const { visitId, tickets } = await takeIn({ draft, sent, ...rest, onKept });
      // Also where somebody has left the room meanwhile: it is taken in.
      ofThis(emptyVisit);
      return { visitId, first: tickets[0], isStopped: mustStop(draft.balls[0]) };
    },
    ["queue", "tickets", "visits", "balls", "bowlers", "search"],
  );
}

/** Enter in the field with nothing to look up: same as last time where that has not been said, then checked in and printed. */
export function useGoOn(ball: BallDraft | null, change: Change, print: () => void): () => void {
  const client = useQueryClient();
  return async () => {
    if (ball === null) return;
    const { key, ballId, sameAsLast, wanted, symptoms } = ball;
    if (ballId === null || sameAsLast || wanted !== "" || symptoms.length > 0) return print();
    // Pressed again before the last time has been read.
    const last = await client.ensureQueryData(lastTimeQuery(ballId)).catch(() => null);
    if (last?.last?.ticket.finishAfter) change((old) => changedBall(old, key, { sameAsLast: true }));
    else document.querySelector<HTMLButtonElement>(".complaint")?.focus();
  };
}
