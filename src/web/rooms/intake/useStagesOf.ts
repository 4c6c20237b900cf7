import { useQueries } from "@tanstack/react-query";
import type { Ball } from "#contract/records/ball";
import { benchBallFor, type OnTheBench } from "#contract/records/benchBall";
import type { Ticket } from "#contract/records/ticket";
import { plannedStages } from "../../benchWork/plannedStages.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { type BallDraft, mustStop, scratchesOf } from "./visitDraft.ts";

/** How the last work on a ball is read. */
export const lastTimeQuery = (id: string) => ({
  queryKey: ["tickets", "last", id],
  queryFn: () => answered(shop.balls[":id"]["last-time"].$get({ param: { id } })),
  enabled: id !== "",
});

/** What was done on a ball the last time. @param id empty where the shop has not seen it before */
export function useLastTime(id: string) {
  const { queryKey, queryFn, enabled } = lastTimeQuery(id);
  return useRead(queryKey, queryFn, { enabled });
}

type Stages = readonly Pick<Ticket["stages"][number], "kind" | "abrasive">[];

/** The work that each ball of the form would be taken in for, as far as it has been read and decided. */
export function useStagesOf(drafts: readonly BallDraft[]): readonly Stages[] {
  const ids = drafts.map(({ ballId }) => ballId ?? "");
  const balls = useQueries({
    queries: ids.map((id) => ({
      queryKey: ["balls", id],
      queryFn: () => answered(shop.balls[":id"].$get({ param: { id } })),
      enabled: id !== "",
    })),
  });
  const lasts = useQueries({ queries: ids.map(lastTimeQuery) });
  return drafts.map((draft, i) => stagesOf(draft, balls[i].data, lasts[i].data?.last?.ticket ?? null));
}

/** @param ball as it is kept; undefined where it is new, or not read yet */
function stagesOf(draft: BallDraft, ball: Ball | undefined, last: Ticket | null): Stages {
  const wanted = draft.sameAsLast ? (last?.finishAfter ?? "") : draft.wanted;
  if (wanted === "" || mustStop(draft) || (draft.ballId !== null && ball === undefined)) return [];
  const found = draft.found.map((what) => ({ at: "", what, note: "" }));
  const whole = ball ?? unseen(draft);
  const bench = benchBallFor(scratchesOf(draft), { ...whole, found: [...whole.found, ...found] });
  if (draft.sameAsLast && last !== null && bench.scratches !== "deep") return last.stages;
  return plannedStages(bench, wanted).map(({ kind = null, abrasive = null }) => ({ kind, abrasive }));
}

/** A ball that is not kept yet, as far as the bench looks at one. */
function unseen({ cover }: BallDraft): OnTheBench {
  return { cover: cover === "" ? null : cover, core: null, surface: [], boxFinish: null, games: [], found: [] };
}
