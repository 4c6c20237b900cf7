import { useEffect, useState } from "react";
import { Link, useLocation, useSearchParams } from "wouter";
import { INTAKE } from "#words/en/rooms/intake";
import { usePricesToday } from "../../shop/pricing.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { usePromise } from "../../shop/usePromise.ts";
import { useRead } from "../../shop/useShop.ts";
import { useSettings } from "../../shop/zone.ts";
import { AlreadyHere } from "./AlreadyHere.tsx";
import { BallCards } from "./BallCards.tsx";
import { useBill } from "./BillAndPromise.tsx";
import { CounterField } from "./CounterField.tsx";
import { HelpsThePlan } from "./HelpsThePlan.tsx";
import { HereThisWeek } from "./HereThisWeek.tsx";
import { LastTime } from "./LastTime.tsx";
import { NewBall, NewBowler } from "./NewOnes.tsx";
import { TakeInPanel } from "./TakeInPanel.tsx";
import { type Change, useGoOn, useSend, useTakeBall } from "./useCounter.ts";
import { type OpenTickets, useOpenTickets } from "./useOpenTickets.ts";
import {
  type BallDraft,
  changedBall,
  currentBall,
  emptyVisit,
  knownBowler,
  missing,
  type VisitDraft,
  withNewBowler,
} from "./visitDraft.ts";
import { WhatIsWrong } from "./WhatIsWrong.tsx";

const MEMORY = "gritwright.intake";

/** The counter: a visit of one or several balls, checked in under a minute. */
export function IntakeRoom() {
  const [draft, setDraft] = useKept(MEMORY, emptyVisit);
  const [tried, setTried] = useState(false);
  const [, go] = useLocation();
  const priceList = usePricesToday();
  const prices = priceList ?? [];
  const settings = useSettings().data;
  const reckoned = usePromise(
    draft.balls.length === 0 ? [null] : draft.balls.map(({ ballId, sameAsLast }) => (sameAsLast ? ballId : null)),
  );
  const promisedFor = draft.sent?.promisedFor ?? draft.promisedFor ?? reckoned.at;
  const bill = useBill(draft.balls, prices, settings);
  const change: Change = setDraft;
  const takeBall = useTakeBall(change);
  const open = useOpenTickets(draft.balls);
  const here = new Set(open.of.keys());
  const write = useSend(draft, change, {
    promisedFor,
    prices,
    currency: settings?.currency ?? "USD",
    taxMillipercent: settings?.taxMillipercent ?? 0,
  });
  // Without them a price would be left out, and the money be of another currency.
  const isRead = settings !== undefined && priceList !== undefined && open.isRead;
  const send = (then: "print" | "plan") => {
    setTried(true);
    if (missing(draft, here) !== null || write.isPending || !isRead) return;
    write.mutate(then, {
      onSuccess: ({ visitId, first, isStopped }) => {
        setTried(false);
        go(then === "print" ? `/print/visit/${visitId}?now` : isStopped ? `/tickets/${first}` : `/plan?ticket=${first}`);
      },
    });
  };
  const ball = currentBall(draft);
  const goOn = useGoOn(ball, change, () => send("print"));
  useEffect(() => {
    document.title = INTAKE.title;
  }, []);
  useOfBowler(change);
  const isEmpty = draft.bowler === null && draft.balls.length === 0;
  return (
    <main id="answer" className="room intake" tabIndex={-1}>
      <div className="room-head counter-head">
        <h1>{INTAKE.title}</h1>
        {!isEmpty && (
          <button type="button" className="link-button" onClick={() => setDraft(emptyVisit())}>
            {INTAKE.startAgain}
          </button>
        )}
      </div>
      <div className="counter-columns">
        <div>
          <CounterField
            onBowler={(bowler) => change((old) => ({ ...old, bowler: knownBowler(bowler) }))}
            onBall={takeBall}
            onNew={(typed) => change((old) => withNewBowler(old, typed))}
            onGoOn={goOn}
          />
          {isEmpty ? (
            <HereThisWeek onBall={takeBall} onNew={() => change((old) => withNewBowler(old, ""))} />
          ) : (
            <TheVisit draft={draft} ball={ball} open={open} tried={tried} onChange={change} />
          )}
        </div>
        <TakeInPanel
          draft={draft}
          here={here}
          prices={prices}
          bill={bill}
          reckoned={reckoned}
          promisedFor={promisedFor}
          tried={tried}
          isBusy={write.isPending || !isRead}
          fault={write.error}
          onChange={change}
          onSend={send}
        />
      </div>
    </main>
  );
}

interface VisitProps {
  readonly draft: VisitDraft;
  readonly ball: BallDraft | null;
  readonly open: OpenTickets;
  readonly tried: boolean;
  readonly onChange: Change;
}

/** Who came, with which balls, and what is asked about the one in hand. */
function TheVisit({ draft, ball, open, tried, onChange }: VisitProps) {
  const { bowler } = draft;
  const ticket = ball === null ? undefined : open.of.get(ball.key);
  const set = (change: Partial<BallDraft>) => ball !== null && onChange((old) => changedBall(old, ball.key, change));
  return (
    <>
      {ball !== null && ball.ballId !== null && (
        <LastTime ball={ball} bowlerId={bowler?.id ?? null} onSame={(sameAsLast) => set({ sameAsLast })} />
      )}
      {ball !== null && ticket !== undefined && (
        <AlreadyHere ball={ball} ticket={ticket} tried={tried} onWhy={(besidesWhy) => set({ besidesWhy })} />
      )}
      {bowler !== null && bowler.id === null && (
        <NewBowler
          bowler={bowler}
          tried={tried}
          onChange={(part) => onChange((old) => (old.bowler === null ? old : { ...old, bowler: { ...old.bowler, ...part } }))}
        />
      )}
      {bowler !== null && bowler.id !== null && (ball === null || ball.ballId === null) && (
        <h2 className="whose">
          <Link href={`/bowlers/${bowler.id}`}>{bowler.name}</Link>
        </h2>
      )}
      <BallCards draft={draft} onChange={onChange} />
      {ball !== null && (
        <>
          {ball.ballId === null && <NewBall key={ball.key} ball={ball} isNext={bowler?.name !== ""} tried={tried} onChange={set} />}
          <WhatIsWrong key={`wrong-${ball.key}`} ball={ball} isOneOfSeveral={draft.balls.length > 1} onChange={set} />
          <HelpsThePlan
            ball={ball}
            bowlerId={bowler?.id ?? null}
            told={draft.told ?? {}}
            playedOn={draft.playedOn}
            onBall={set}
            onTold={(told) => onChange((old) => ({ ...old, told }))}
            onPlayedOn={(playedOn) => onChange((old) => ({ ...old, playedOn }))}
          />
        </>
      )}
    </>
  );
}

/** With a bowler in the address an empty form begins with them; what was being written before stays. */
function useOfBowler(change: Change) {
  const [params] = useSearchParams();
  const id = params.get("bowler") ?? "";
  const bowler = useRead(["bowlers", id], () => answered(shop.bowlers[":id"].$get({ param: { id } })), { enabled: id !== "" }).data;
  useEffect(() => {
    if (bowler === undefined || bowler.erasedAt !== null) return;
    change((old) => (old.bowler === null && old.balls.length === 0 ? { ...old, bowler: knownBowler(bowler) } : old));
  }, [bowler, change]);
}
