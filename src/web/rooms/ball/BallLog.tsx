import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import { BALL_LOG } from "#words/en/rooms/ball";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useRoughness, useShopTimes } from "../../shop/zone.ts";
import { type BallMoment, ballTimeline } from "./ballTimeline.ts";

/** Everything that happened to a ball, latest first. */
export function BallLog({ ball }: { readonly ball: Ball }) {
  const readings = useRead(["readings", "ball", ball.id], () => answered(shop.readings.$get({ query: { ballId: ball.id, limit: "200" } })));
  const tickets = useRead(["tickets", "ball", ball.id], () => answered(shop.tickets.$get({ query: { ballId: ball.id, limit: "200" } })));
  return (
    <section className="plate">
      <h2>{BALL_LOG.log}</h2>
      <Reading of={readings}>
        {(read) => <Reading of={tickets}>{(written) => <Moments moments={ballTimeline(ball, read.items, written.items)} />}</Reading>}
      </Reading>
    </section>
  );
}

function Moments({ moments }: { readonly moments: readonly BallMoment[] }) {
  const times = useShopTimes();
  if (moments.length === 0) return <p className="nothing">{BALL_LOG.emptyLog}</p>;
  return (
    <ol className="ball-log">
      {moments.map((moment, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two things may have happened at one moment
        <li key={`${moment.at} ${i}`}>
          <time dateTime={moment.at}>{times.day(moment.at)}</time> <Moment moment={moment} />
        </li>
      ))}
    </ol>
  );
}

function Moment({ moment }: { readonly moment: BallMoment }) {
  const roughness = useRoughness();
  switch (moment.kind) {
    case "surface":
      return <span>{BALL_LOG.surface(moment.of.who, moment.of.finish, moment.of.note)}</span>;
    case "games":
      return <span>{BALL_LOG.games(moment.of.games)}</span>;
    case "found":
      return <span>{BALL_LOG.found(moment.of.what, moment.of.note)}</span>;
    case "reading": {
      const { when, place, raUm, comparison } = moment.of;
      return <span>{BALL_LOG.reading(MEASURE.when[when], placeText(place), raUm === null ? (comparison ?? "") : roughness(raUm))}</span>;
    }
    case "ticket":
      return <Link href={`/tickets/${moment.of.id}`}>{BALL_LOG.ticket(moment.of.finishAfter, TICKET_STATE_WORDS[moment.of.state])}</Link>;
  }
}
