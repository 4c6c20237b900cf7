import { useEffect } from "react";
import { Link, useSearchParams } from "wouter";
import type { Ball } from "#contract/records/ball";
import { PLACES, type Place } from "#engine/surface/readings/places";
import { MEASURE } from "#words/en/rooms/measure";
import { workHere } from "../../benchWork/onTheBench.ts";
import { FindBall } from "../../shop/FindBall.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useReadingsOf } from "../../shop/readingsHere.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useOneTicket, useStagesDone } from "../../shop/useTicket.ts";
import { useSettings } from "../../shop/zone.ts";
import { MeasureBall } from "./MeasureBall.tsx";
import type { MeasuringOf } from "./useMeasuring.ts";

/** Readings of one ball, place by place: by sheen against a reference ball, or with a tester. */
export function MeasureRoom() {
  const [params] = useSearchParams();
  const ballId = params.get("ball");
  const ticketId = params.get("ticket");
  const side = params.get("side");
  const asked = PLACES.find((place) => place === side) ?? null;
  return (
    <main id="answer" className="room measure" tabIndex={-1}>
      {ballId === null ? <ChooseBall /> : <OfBall key={`${ballId} ${ticketId}`} ballId={ballId} ticketId={ticketId} asked={asked} />}
    </main>
  );
}

interface AskedBall {
  readonly ballId: string;
  readonly ticketId: string | null;
  readonly asked: Place | null;
}

function OfBall({ ballId, ticketId, asked }: AskedBall) {
  const ball = useRead(["balls", ballId], () => answered(shop.balls[":id"].$get({ param: { id: ballId } })));
  return (
    <Reading of={ball}>
      {(read) =>
        ticketId === null ? (
          <WithReadings ball={read} ticket={null} work={null} again={[]} asked={asked} />
        ) : (
          <WithTicket ball={read} ticketId={ticketId} asked={asked} />
        )
      }
    </Reading>
  );
}

/** The work of the ticket: what was signed, and what was put back to be worked again. */
function WithTicket({ ball, ticketId, asked }: { readonly ball: Ball; readonly ticketId: string; readonly asked: Place | null }) {
  const ticket = useOneTicket(ticketId);
  const done = useStagesDone(ticketId);
  const { waiting } = useOutbox();
  return (
    <Reading of={ticket}>
      {(ofTicket) => (
        <Reading of={done}>
          {({ items }) => {
            const again = items.flatMap(({ doneAt, sidesAgain }) => (sidesAgain.length === 0 ? [] : [{ at: doneAt, sides: sidesAgain }]));
            return <WithReadings ball={ball} ticket={ofTicket} work={workHere(ofTicket, items, waiting)} again={again} asked={asked} />;
          }}
        </Reading>
      )}
    </Reading>
  );
}

type Known = Pick<MeasuringOf, "ball" | "ticket" | "work" | "again" | "asked">;

/** Figures are typed in the shop's unit: without its settings nothing can be read. */
function WithReadings(known: Known) {
  const readings = useReadingsOf(known.ball.id);
  const settings = useSettings();
  const references = useRead(["reference-balls"], () =>
    answered(shop["reference-balls"].$get({ query: { order: "newest first", limit: "200" } })),
  );
  return (
    <Reading of={settings}>
      {({ roughnessUnit, zone }) => (
        <Reading of={references}>
          {({ items }) => (
            <Reading of={readings}>
              {(read) => <MeasureBall {...known} read={read} references={items} today={midnight(zone)} unit={roughnessUnit} />}
            </Reading>
          )}
        </Reading>
      )}
    </Reading>
  );
}

const DAY_MS = 86_400_000;

/** When the shop's day began, ISO; the hour in which clocks are put is nobody's at a bench. */
function midnight(zone: string): string {
  const now = Date.now();
  const clock = new Intl.DateTimeFormat("en", { timeZone: zone, hour: "numeric", minute: "numeric", second: "numeric", hourCycle: "h23" });
  const [hour, minute, second] = clock
    .formatToParts(now)
    .filter(({ type }) => type !== "literal")
    .map(({ value }) => Number(value));
  const since = 1000 * (3600 * hour + 60 * minute + second);
  return new Date(now - Math.min(since, DAY_MS)).toISOString();
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
