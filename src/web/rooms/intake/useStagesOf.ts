import { type Ball, ballWritten } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import { benchBallOf } from "../../benchWork/benchBall.ts";
import { plannedStages } from "../../benchWork/plannedStages.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { type BallDraft, mustStop } from "./visitDraft.ts";

/** What was done on a ball the last time. @param id empty where the shop has not seen it before */
export function useLastTime(id: string) {
  return useRead(["tickets", "last", id], () => answered(shop.balls[":id"]["last-time"].$get({ param: { id } })), { enabled: id !== "" });
}

type Stages = readonly Pick<Ticket["stages"][number], "kind" | "abrasive">[];

/** The work that a ball of the form would be taken in for, as far as it has been read and decided. */
export function useStagesOf(draft: BallDraft): Stages {
  const id = draft.ballId ?? "";
  const ball = useRead(["balls", id], () => answered(shop.balls[":id"].$get({ param: { id } })), { enabled: id !== "" }).data;
  const last = useLastTime(id).data?.last ?? null;
  if (draft.sameAsLast && last !== null) return last.ticket.stages;
  if (draft.wanted === "" || mustStop(draft)) return [];
  if (id !== "" && ball === undefined) return [];
  const found = draft.found.map((what) => ({ at: "", what, note: "" }));
  const whole = ball ?? unseen(draft);
  return plannedStages(benchBallOf({ ...whole, found: [...whole.found, ...found] }), draft.wanted).map(
    ({ kind = null, abrasive = null }) => ({
      kind,
      abrasive,
    }),
  );
}

/** A ball that is not kept yet, as far as the bench looks at one. */
function unseen({ cover }: BallDraft): Ball {
  return ballWritten.parse({ name: "?", cover: cover === "" ? null : cover }) as Ball;
}
