import { useEffect, useState } from "react";
import { Link, useLocation, useSearchParams } from "wouter";
import { INTAKE } from "#words/en/rooms/intake";
import { PRICING } from "#words/en/rooms/pricing";
import { PROMISE } from "#words/en/rooms/promise";
import { LineField } from "../../pieces/PlainFields.tsx";
import { usePricesToday } from "../../shop/pricing.ts";
import { answered, ShopFault, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { usePromise } from "../../shop/usePromise.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { useSettings } from "../../shop/zone.ts";
import { BallWork } from "./BallWork.tsx";
import { Find } from "./Find.tsx";
import { Promised } from "./Promised.tsx";
import { takeIn } from "./takeIn.ts";
import { type BallDraft, emptyVisit, knownBall, knownBowler, missing, newBall, type VisitDraft } from "./visitDraft.ts";

const MEMORY = "gritwright.intake";

/** The counter: a visit of one or several balls, taken in under a minute. */
export function IntakeRoom() {
  const [draft, setDraft] = useKept(MEMORY, emptyVisit);
  const [tried, setTried] = useState(false);
  const [, go] = useLocation();
  const priceList = usePricesToday();
  const prices = priceList ?? [];
  const reckoned = usePromise(
    draft.balls.length === 0 ? [null] : draft.balls.map(({ ballId, sameAsLast }) => (sameAsLast ? ballId : null)),
  );
  const promisedFor = draft.sent?.promisedFor ?? draft.promisedFor ?? reckoned.at;
  const settings = useSettings().data;
  const write = useWrite(
    async (print: boolean) => {
      const sent = draft.sent ?? { at: new Date().toISOString(), promisedFor };
      // The form may be emptied meanwhile, and be about another visit.
      const ofThis = (change: (old: VisitDraft) => VisitDraft) => setDraft((old) => (old.key === draft.key ? change(old) : old));
      ofThis((old) => ({ ...old, sent }));
      const onKept = (part: string, id: string) => ofThis((old) => ({ ...old, kept: { ...old.kept, [part]: id } }));
      const tickets = await takeIn({ draft, sent, prices, currency: settings?.currency ?? "USD", onKept });
      // Also where somebody has left the room meanwhile: it is taken in.
      ofThis(emptyVisit);
      return { print, first: tickets[0] };
    },
    ["queue", "tickets", "visits", "balls", "bowlers", "search"],
  );
  useEffect(() => {
    document.title = INTAKE.title;
  }, []);
  useOfBowler(setDraft);
  const lacks = missing(draft);
  // Without them a price would be left out, and the money be of another currency.
  const isRead = settings !== undefined && priceList !== undefined;
  const send = (print: boolean) => {
    setTried(true);
    if (lacks !== null || write.isPending || !isRead) return;
    write.mutate(print, {
      onSuccess: ({ first }) => {
        go(print ? `/print/ticket/${first}?now` : `/tickets/${first}`);
      },
    });
  };
  const change = (next: (old: VisitDraft) => VisitDraft) => setDraft(next);
  return (
    <main id="answer" className="room intake" tabIndex={-1}>
      <div className="room-head">
        <h1>{INTAKE.title}</h1>
        {(draft.bowler !== null || draft.balls.length > 0) && (
          <button type="button" className="button" onClick={() => setDraft(emptyVisit())}>
            {INTAKE.startAgain}
          </button>
        )}
      </div>
      <div className="room-columns intake-columns">
        <div>
          {draft.bowler === null && draft.balls.length === 0 ? (
            <Find
              onBowler={(bowler) => change((old) => ({ ...old, bowler: knownBowler(bowler) }))}
              onBall={async (ball) => {
                const { bowlerId } = ball;
                const unnamed = bowlerId === null ? null : { id: bowlerId, name: "…", phone: "" };
                change((old) => ({ ...old, balls: [...old.balls, knownBall(ball)], bowler: old.bowler ?? unnamed }));
                if (bowlerId === null) return;
                const owner = await answered(shop.bowlers[":id"].$get({ param: { id: bowlerId } })).catch(() => null);
                // The form may be about somebody else by now; whose ball it is stands there without a name too.
                if (owner !== null) change((old) => (old.bowler?.id === owner.id ? { ...old, bowler: knownBowler(owner) } : old));
              }}
              onNew={(name) => change((old) => ({ ...old, bowler: { id: null, name, phone: "" }, balls: [newBall()] }))}
            />
          ) : (
            <WhoBrings draft={draft} tried={tried} onChange={change} />
          )}
          {draft.balls.map((ball, i) => (
            <BallWork
              key={ball.key}
              ball={ball}
              prices={prices}
              tried={tried}
              onChange={(next) => change((old) => withBall(old, i, next))}
              onLeaveOut={() => change((old) => ({ ...old, balls: old.balls.filter(({ key }) => key !== ball.key) }))}
            />
          ))}
        </div>
        <aside className="plate take-in">
          <Promised draft={draft} at={promisedFor} reckoned={reckoned} tried={tried} onChange={change} />
          {tried && lacks !== null && (
            <p role="alert" className="field-problem">
              {{ ball: INTAKE.needsBall, name: INTAKE.needsName, why: PRICING.needsWhy, promise: PROMISE.needsWhy }[lacks]}
            </p>
          )}
          {write.error instanceof ShopFault && (
            <div role="alert" className="failed">
              <p>{INTAKE.failed}</p>
              <p>{write.error.fields.map(({ message }) => message).join(" ") || write.error.message}</p>
            </div>
          )}
          <button type="button" className="button primary wide" disabled={write.isPending || !isRead} onClick={() => send(true)}>
            {INTAKE.takeInAndPrint}
          </button>
          <button type="button" className="button wide" disabled={write.isPending || !isRead} onClick={() => send(false)}>
            {INTAKE.takeIn(Math.max(1, draft.balls.length))}
          </button>
        </aside>
      </div>
    </main>
  );
}

/** With a bowler in the address an empty form begins with them; what was being written before stays. */
function useOfBowler(setDraft: (next: (old: VisitDraft) => VisitDraft) => void) {
  const [params] = useSearchParams();
  const id = params.get("bowler") ?? "";
  const bowler = useRead(["bowlers", id], () => answered(shop.bowlers[":id"].$get({ param: { id } })), { enabled: id !== "" }).data;
  useEffect(() => {
    if (bowler === undefined || bowler.erasedAt !== null) return;
    setDraft((old) => (old.bowler === null && old.balls.length === 0 ? { ...old, bowler: knownBowler(bowler) } : old));
  }, [bowler, setDraft]);
}

function withBall(draft: VisitDraft, index: number, ball: BallDraft): VisitDraft {
  return { ...draft, balls: draft.balls.map((one, i) => (i === index ? ball : one)) };
}

interface WhoProps {
  readonly draft: VisitDraft;
  readonly tried: boolean;
  onChange(next: (old: VisitDraft) => VisitDraft): void;
}

/** The bowler at the counter, and which of the balls came along. */
function WhoBrings({ draft, tried, onChange }: WhoProps) {
  const { bowler } = draft;
  const id = bowler?.id ?? "";
  const owned = useRead(["balls", "of", id], () => answered(shop.balls.$get({ query: { bowlerId: id, limit: "200" } })), {
    enabled: id !== "",
  });
  const others = (owned.data?.items ?? []).filter((ball) => !draft.balls.some(({ ballId }) => ballId === ball.id));
  const set = (change: Partial<NonNullable<VisitDraft["bowler"]>>) =>
    onChange((old) => ({ ...old, bowler: { id: null, name: "", phone: "", ...old.bowler, ...change } }));
  return (
    <section className="plate">
      <h2>
        {bowler === null ? (
          INTAKE.unclaimed
        ) : bowler.id === null ? (
          INTAKE.newBowler
        ) : (
          <Link href={`/bowlers/${bowler.id}`}>{bowler.name}</Link>
        )}
      </h2>
      {bowler !== null && bowler.id === null && (
        <div className="field-row">
          <LineField
            label={INTAKE.name}
            value={bowler.name}
            problem={tried && bowler.name.trim() === "" ? INTAKE.needsName : undefined}
            onChange={(name) => set({ name })}
          />
          <LineField label={INTAKE.phone} type="tel" value={bowler.phone} onChange={(phone) => set({ phone })} />
        </div>
      )}
      {others.length > 0 && (
        <ul className="found">
          {others.map((ball) => (
            <li key={ball.id}>
              <button type="button" onClick={() => onChange((old) => ({ ...old, balls: [...old.balls, knownBall(ball)] }))}>
                <strong>{ball.name}</strong> <span>{ball.serial ?? ""}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <button type="button" className="button" onClick={() => onChange((old) => ({ ...old, balls: [...old.balls, newBall()] }))}>
        {draft.balls.length === 0 ? INTAKE.newBall : INTAKE.addBall}
      </button>
    </section>
  );
}
