import { useEffect } from "react";
import { Link, useSearchParams } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Ticket } from "#contract/records/ticket";
import { WRONG } from "#words/en/rooms/wrong";
import { useComputed } from "../../client/poolHere.ts";
import { ballUse } from "../../measured/ballUse.ts";
import { FindBall } from "../../shop/FindBall.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useRead } from "../../shop/useShop.ts";
import { useSettings } from "../../shop/zone.ts";
import { ComplaintForm } from "./ComplaintForm.tsx";
import { type ComplaintDraft, complaintFileOf, newComplaint } from "./complaintDraft.ts";
import { WrongAnswer } from "./WrongAnswer.tsx";

/** What may be wrong with a ball, or with what is not the ball; from a ticket, a ball's log, or by itself. */
export function WrongRoom() {
  const [params] = useSearchParams();
  const ballId = params.get("ball");
  const ticketId = params.get("ticket");
  return (
    <main id="answer" className="room wrong" tabIndex={-1}>
      {ballId === null ? (
        params.has("all") ? (
          <Whole ball={null} bowler={null} tickets={[]} ticket={null} />
        ) : (
          <ChooseBall />
        )
      ) : (
        <OfBall key={`${ballId} ${ticketId}`} ballId={ballId} ticketId={ticketId} />
      )}
    </main>
  );
}

function ChooseBall() {
  useEffect(() => {
    document.title = WRONG.title;
  }, []);
  return (
    <>
      <h1>{WRONG.title}</h1>
      <section className="plate">
        <h2>{WRONG.chooseBall}</h2>
        <p>
          <Link href="/wrong?all" className="button">
            {WRONG.allChanged}
          </Link>
        </p>
        <FindBall line={(ball) => <Link href={`/wrong?ball=${ball.id}`}>{ball.name}</Link>} />
      </section>
    </>
  );
}

function OfBall({ ballId, ticketId }: { readonly ballId: string; readonly ticketId: string | null }) {
  const ball = useRead(["balls", ballId], () => answered(shop.balls[":id"].$get({ param: { id: ballId } })));
  const tickets = useRead(["tickets", "of", ballId], () => answered(shop.tickets.$get({ query: { ballId, limit: "200" } })));
  const bowlerId = ball.data?.bowlerId ?? null;
  const bowler = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  });
  return (
    <Reading of={ball}>
      {(read) => (
        <Reading of={tickets}>
          {({ items }) => {
            const whole = (owner: Bowler | null) => (
              <Whole ball={read} bowler={owner} tickets={items} ticket={items.find(({ id }) => id === ticketId) ?? null} />
            );
            return read.bowlerId === null ? whole(null) : <Reading of={bowler}>{whole}</Reading>;
          }}
        </Reading>
      )}
    </Reading>
  );
}

interface WholeProps {
  /** Null where all balls changed. */
  readonly ball: Ball | null;
  readonly bowler: Bowler | null;
  readonly tickets: readonly Ticket[];
  readonly ticket: Ticket | null;
}

function Whole({ ball, bowler, tickets, ticket }: WholeProps) {
  const settings = useSettings().data;
  const [draft, setDraft] = useKept<ComplaintDraft>(`gritwright.complaint.${ball?.id ?? "all"}.${ticket?.id ?? ""}`, () =>
    newComplaint(ball, ticket, ball && ballUse(ball, tickets, []).use.gamesSinceExtraction),
  );
  const file = complaintFileOf(draft, ball, bowler, settings?.ruleBook ?? null);
  const found = useComputed(file === null ? null : { kind: "diagnose", file });
  const title = ball === null ? WRONG.title : WRONG.titleOf(ball.name);
  useEffect(() => {
    document.title = title;
  }, [title]);
  const problems = found.data?.kind === "problems" ? found.data.problems : [];
  const diagnosis = found.data?.kind === "diagnosis" && file !== null ? found.data.diagnosis : null;
  return (
    <>
      <div className="room-head">
        <h1>{title}</h1>
        <nav className="papers no-print" aria-label={WRONG.title}>
          {ticket !== null && (
            <Link href={`/tickets/${ticket.id}`} className="button">
              {WRONG.toTicket}
            </Link>
          )}
          {ball !== null && (
            <Link href={`/balls/${ball.id}`} className="button">
              {WRONG.toBall}
            </Link>
          )}
        </nav>
      </div>
      <div className="room-columns wrong-columns">
        <ComplaintForm draft={draft} problems={problems} onChange={setDraft} />
        <section className="plate" aria-live="polite">
          <h2>{WRONG.answer}</h2>
          {file === null && <p className="nothing">{WRONG.noSymptom}</p>}
          {found.error !== null && <p className="failed">{WRONG.failed(found.error.message)}</p>}
          {file !== null && found.data === undefined && found.error === null && <p className="reading">{WRONG.thinking}</p>}
          {diagnosis !== null && <WrongAnswer diagnosis={diagnosis} draft={draft} ball={ball} ticket={ticket} onChange={setDraft} />}
        </section>
      </div>
    </>
  );
}
