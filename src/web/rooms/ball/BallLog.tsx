import { useState } from "react";
import { Link } from "wouter";
import type { Ball } from "#contract/records/ball";
import { BALL_LOG } from "#words/en/rooms/ball";
import { MEASURE, placeText } from "#words/en/rooms/measure";
import { PHOTOS } from "#words/en/rooms/photos";
import { TABLE } from "#words/en/rooms/pieces";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { useReadingText } from "../../shop/readingText.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { type BallMoment, ballTimeline } from "./ballTimeline.ts";
import type { BallRecords } from "./useBallRecords.ts";

const AT_FIRST = 40;

/** Everything that happened to a ball, latest first; of a long life the latest part, and the rest when it is asked for. */
export function BallLog({ ball, records }: { readonly ball: Ball; readonly records: BallRecords }) {
  const times = useShopTimes();
  const [all, setAll] = useState(false);
  const moments = ballTimeline(ball, records);
  const shown = all ? moments : moments.slice(0, AT_FIRST);
  return (
    <section className="plate">
      <h2>{BALL_LOG.log}</h2>
      {moments.length === 0 && <p className="nothing">{BALL_LOG.emptyLog}</p>}
      <ol className="ball-log">
        {shown.map((moment, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two things may have happened at one moment
          <li key={`${moment.at} ${i}`}>
            <time dateTime={moment.at}>{times.day(moment.at)}</time> <Moment moment={moment} />
          </li>
        ))}
      </ol>
      {moments.length > shown.length && (
        <button type="button" className="button wide" onClick={() => setAll(true)}>
          {TABLE.showAll(moments.length)}
        </button>
      )}
    </section>
  );
}

function Moment({ moment }: { readonly moment: BallMoment }) {
  const readingText = useReadingText();
  switch (moment.kind) {
    case "surface": {
      const { who, finish, way, note } = moment.of;
      return <span>{BALL_LOG.surface(who, finish, way === null ? null : BALL_LOG.ways[way], note)}</span>;
    }
    case "games":
      return <span>{moment.of.word === null ? BALL_LOG.games(moment.of.games) : BALL_LOG.gamesTold[moment.of.word]}</span>;
    case "found":
      return <span>{BALL_LOG.found(BALL_LOG.finds[moment.of.what], moment.of.note)}</span>;
    case "reading": {
      const { when, place } = moment.of;
      return <span>{BALL_LOG.reading(MEASURE.when[when], placeText(place), readingText(moment.of))}</span>;
    }
    case "stage": {
      const { way, initials, note, abrasive, takesBack } = moment.of;
      if (takesBack !== null) return <span>{BALL_LOG.takenBack(initials, note)}</span>;
      const tool = moment.of.kind === null ? null : abrasiveName(abrasive);
      const what = [stageName(moment.of), tool].filter((part) => part !== null).join(", ");
      return <span>{BALL_LOG.stage(what, way === null ? null : BALL_LOG.stageWays[way], initials, note)}</span>;
    }
    case "photo":
      return (
        <a href={`/api/photos/${moment.of.id}/bytes`} target="_blank" rel="noreferrer">
          {BALL_LOG.photo(PHOTOS.ofs[moment.of.of], moment.of.note)}
        </a>
      );
    case "ticket":
      return <Link href={`/tickets/${moment.of.id}`}>{BALL_LOG.ticket(moment.of.finishAfter, TICKET_STATE_WORDS[moment.of.state])}</Link>;
  }
}
