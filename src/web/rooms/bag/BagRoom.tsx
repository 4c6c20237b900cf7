import { useEffect } from "react";
import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Pattern } from "#contract/records/place";
import { BAG_ROOM } from "#words/en/rooms/bag";
import { usePool } from "../../client/poolHere.ts";
import { Computing } from "../../pieces/Computing.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useBag } from "../../shop/useBalls.ts";
import { useKept } from "../../shop/useKept.ts";
import { useRead } from "../../shop/useShop.ts";
import { BagAnswer } from "./BagAnswer.tsx";
import { BagForm } from "./BagForm.tsx";
import { type BagDraft, bagFileOf, newDraft } from "./bagDraft.ts";
import { type BagState, useBagPlan } from "./useBagPlan.ts";

/** A bowler's bag for a session: which ball, with which finish, when. */
export function BagRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const bowler = useRead(["bowlers", params.id], () => answered(shop.bowlers[":id"].$get({ param: { id: params.id } })));
  const balls = useBag(params.id);
  const patterns = useRead(["patterns", "all"], () => answered(shop.patterns.$get({ query: { limit: "200", order: "oldest first" } })));
  useEffect(() => {
    document.title = BAG_ROOM.pageTitle;
  }, []);
  return (
    <main id="answer" className="room bag" tabIndex={-1}>
      <Reading of={bowler}>
        {(read) => (
          <Reading of={balls}>
            {(all) => (
              <Reading of={patterns}>
                {({ items }) => (
                  <WholeBag key={read.id} bowler={read} balls={all.filter(({ state }) => state === "in use")} patterns={items} />
                )}
              </Reading>
            )}
          </Reading>
        )}
      </Reading>
    </main>
  );
}

interface WholeBagProps {
  readonly bowler: Bowler;
  readonly balls: readonly Ball[];
  readonly patterns: readonly Pattern[];
}

function WholeBag({ bowler, balls, patterns }: WholeBagProps) {
  const today = new Date().toISOString().slice(0, 10);
  const [draft, setDraft] = useKept<BagDraft>(`gritwright.bag.${bowler.id}`, () => newDraft(balls, today));
  const state = useBagPlan(usePool());
  const file = bagFileOf(draft, bowler, balls, patterns);
  return (
    <>
      <div className="room-head">
        <h1>{BAG_ROOM.title(bowler.name)}</h1>
        <Link href={`/bowlers/${bowler.id}`} className="button">
          {BAG_ROOM.toBowler}
        </Link>
      </div>
      {balls.length === 0 ? (
        <p className="nothing">{BAG_ROOM.noBalls}</p>
      ) : (
        <>
          <section className="plate no-print">
            <h2>{BAG_ROOM.forWhat}</h2>
            {bowler.deliveries.length === 0 && <p className="note">{BAG_ROOM.notKnown}</p>}
            <BagForm draft={draft} balls={balls} patterns={patterns} problems={state.problems} onChange={setDraft} />
            <Computing {...toldOf(state)} words={BAG_ROOM} onCompute={() => state.compute(file, today)} onStop={state.stop} />
          </section>
          {state.answer !== null && <BagAnswer answer={state.answer} balls={balls} isOld={state.answer.file !== JSON.stringify(file)} />}
        </>
      )}
    </>
  );
}

function toldOf({ status, progress, answer, failure }: BagState) {
  return {
    status,
    progress: progress && { ...progress, said: `${BAG_ROOM.progress[progress.stage]}: ${BAG_ROOM.progressOf(progress.done, progress.of)}` },
    hint: answer === null ? BAG_ROOM.notYet : null,
    failure: failure === null ? null : BAG_ROOM.failed(failure),
  };
}
