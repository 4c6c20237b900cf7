import { useEffect } from "react";
import { Link, useSearchParams } from "wouter";
import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import { MEASURE } from "#words/en/rooms/measure";
import { FindBall } from "../../shop/FindBall.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useSettings } from "../../shop/zone.ts";
import { EarlierReadings } from "./EarlierReadings.tsx";
import { Entering } from "./Entering.tsx";
import { ProfileFiles } from "./ProfileFiles.tsx";

/** Readings of one ball, side by side: by sheen against a reference ball, or with a tester. */
export function MeasureRoom() {
  const [params] = useSearchParams();
  const ballId = params.get("ball");
  return (
    <main id="answer" className="room measure" tabIndex={-1}>
      {ballId === null ? (
        <ChooseBall />
      ) : (
        <OfBall key={`${ballId} ${params.get("ticket")}`} ballId={ballId} ticketId={params.get("ticket")} />
      )}
    </main>
  );
}

function OfBall({ ballId, ticketId }: { readonly ballId: string; readonly ticketId: string | null }) {
  const ball = useRead(["balls", ballId], () => answered(shop.balls[":id"].$get({ param: { id: ballId } })));
  const ticket = useRead(["tickets", ticketId ?? ""], () => answered(shop.tickets[":id"].$get({ param: { id: ticketId ?? "" } })), {
    enabled: ticketId !== null,
  });
  return (
    <Reading of={ball}>
      {(read) =>
        ticketId === null ? (
          <Measuring ball={read} ticket={null} />
        ) : (
          <Reading of={ticket}>{(ofTicket) => <Measuring ball={read} ticket={ofTicket} />}</Reading>
        )
      }
    </Reading>
  );
}

function Measuring({ ball, ticket }: { readonly ball: Ball; readonly ticket: Ticket | null }) {
  const settings = useSettings();
  useEffect(() => {
    document.title = MEASURE.titleOf(ball.name);
  }, [ball.name]);
  return (
    <>
      <div className="room-head">
        <h1>{MEASURE.titleOf(ball.name)}</h1>
        <nav className="papers" aria-label={MEASURE.title}>
          {ticket !== null && (
            <Link href={`/tickets/${ticket.id}`} className="button">
              {MEASURE.toTicket}
            </Link>
          )}
          <Link href="/measure" className="button">
            {MEASURE.otherBall}
          </Link>
        </nav>
      </div>
      {/* Figures are typed in the shop's unit: without it nothing can be read. */}
      <Reading of={settings}>{({ roughnessUnit }) => <Entering ball={ball} ticket={ticket} unit={roughnessUnit} />}</Reading>
      <ProfileFiles ball={ball} ticket={ticket} />
      <EarlierReadings ballId={ball.id} />
    </>
  );
}

function ChooseBall() {
  useEffect(() => {
    document.title = MEASURE.title;
  }, []);
  return (
    <>
      <h1>{MEASURE.title}</h1>
      <section className="plate find">
        <h2>{MEASURE.chooseBall}</h2>
        <p className="note">{MEASURE.chooseBallWhy}</p>
        <FindBall
          line={({ id, name, serial }) => (
            <Link href={`/measure?ball=${id}`}>
              <strong>{name}</strong> <span className="serial">{serial ?? ""}</span>
            </Link>
          )}
        />
      </section>
    </>
  );
}
