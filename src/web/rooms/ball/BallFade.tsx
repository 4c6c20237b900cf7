import { useMemo } from "react";
import type { Ball } from "#contract/records/ball";
import { benchBallOf, knownFinish } from "#contract/records/benchBall";
import { fadeChart } from "#drawing/fadeChart";
import { PAGE_PAINT } from "#drawing/paint";
import { NO_FINDINGS } from "#engine/rules/stops";
import { careOf, type Due } from "#engine/surface/care";
import { planStages, USUAL_HABITS } from "#engine/surface/stages";
import { FADE } from "#words/en/fade";
import { BALL_LOG } from "#words/en/rooms/ball";
import { type BallUse, ballUse } from "../../measured/ballUse.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { type RoughnessShown, useRoughnessUnit, useShopTimes } from "../../shop/zone.ts";
import type { BallRecords } from "./useBallRecords.ts";

interface FadeProps {
  readonly ball: Ball;
  readonly records: BallRecords;
}

/** How the finish fades over the games with the ball's own readings in it, what is due when, and what will end the ball; nothing where nobody knows what is on it. */
export function BallFade({ ball, records }: FadeProps) {
  const { unit } = useRoughnessUnit();
  const drawn = useMemo(() => (knownFinish(ball) === null ? null : fadeOf(ball, records, unit)), [ball, records, unit]);
  return (
    <section className="plate">
      <h2>{BALL_LOG.fade}</h2>
      {drawn === null ? <p className="nothing">{BALL_LOG.fadeUnknown}</p> : <Faded {...drawn} />}
      <WhatEndsIt ball={ball} />
    </section>
  );
}

function Faded({ svg, care, known }: ReturnType<typeof fadeOf>) {
  const times = useShopTimes();
  const { unit, figure } = useRoughnessUnit();
  const { use, extractedAt, resurfacedAt } = known;
  const due = (what: string, { value, low, high }: Due) => <li>{BALL_LOG.due(what, value, low, high)}</li>;
  const since = (what: string, at: string | null, games: number) => (
    <li>{at === null ? BALL_LOG.neverHere(what, games) : BALL_LOG.lastHere(what, times.day(at), games)}</li>
  );
  return (
    <>
      <Chart svg={svg} className="fade-chart" file="fade" />
      <p>{FADE.nowShown(use.gamesSince, figure(care.now.value), figure(care.now.low), figure(care.now.high), unit)}</p>
      <p className="note">{FADE.readings(use.readings.length)}</p>
      <ul>
        {due(BALL_LOG.refresh, care.refresh)}
        {due(BALL_LOG.extraction, care.extraction)}
        {due(BALL_LOG.resurfacing, care.resurfacing)}
      </ul>
      <ul className="note">
        {since(BALL_LOG.extraction, extractedAt, use.gamesSinceExtraction)}
        {since(BALL_LOG.resurfacing, resurfacedAt, use.gamesSinceResurfacing)}
      </ul>
    </>
  );
}

function fadeOf(ball: Ball, { tickets, readings }: BallRecords, unit: RoughnessShown["unit"]) {
  const known: BallUse = ballUse(ball, tickets, readings);
  const care = careOf(known.use);
  const { track, offTrack } = care;
  const gamesNow = Math.min(MOST_DRAWN, known.use.gamesSince);
  const shown = known.use.readings.filter(({ games }) => games <= MOST_DRAWN);
  return { known, care, svg: fadeChart({ name: ball.name, track, offTrack, readings: shown, gamesNow, unit }, PAGE_PAINT) };
}

/** As far as the curve is drawn, games. */
const MOST_DRAWN = 100;

/** How often today's finish can be put on again before something gives out, and what was found that may end the ball before. */
function WhatEndsIt({ ball }: { readonly ball: Ball }) {
  const ends = useMemo(() => {
    const bench = benchBallOf(ball);
    if (bench.finish === null) return null;
    return planStages(bench, bench.finish, NO_FINDINGS, USUAL_HABITS).ends;
  }, [ball]);
  const found = ball.found.filter(({ what }) => what === "crack" || what === "hollow sound");
  return (
    <>
      <h3>{BALL_LOG.ends}</h3>
      {found.length > 0 && <p className="stop">{BALL_LOG.endsNow(found.map(({ what }) => BALL_LOG.finds[what]).join(", "))}</p>}
      {ends === null ? (
        <p className="nothing">{BALL_LOG.unknown}</p>
      ) : (
        <>
          <ul>
            {ends.map(({ what, times }) => (
              <li key={what}>{BALL_LOG.endsAfter(BALL_LOG.endNames[what], times)}</li>
            ))}
          </ul>
          <p className="note">{BALL_LOG.endsWhy}</p>
        </>
      )}
    </>
  );
}
