import { useMemo } from "react";
import type { Ball } from "#contract/records/ball";
import { fadeChart } from "#drawing/fadeChart";
import { PAGE_PAINT } from "#drawing/paint";
import { assume } from "#engine/assumptions";
import { freshRoughness } from "#engine/surface/benchBall";
import { careOf, type Due } from "#engine/surface/care";
import { BALL_LOG } from "#words/en/rooms/ball";
import { benchBallOf, knownFinish } from "../../benchWork/benchBall.ts";
import { Picture } from "../../pieces/Picture.tsx";

/** How the finish fades over the games, and what is due when; nothing where nobody knows what is on the ball. */
export function BallFade({ ball }: { readonly ball: Ball }) {
  const drawn = useMemo(() => (knownFinish(ball) === null ? null : fadeOf(ball)), [ball]);
  const due = (what: string, { value, low, high }: Due) => <li>{BALL_LOG.due(what, value, low, high)}</li>;
  return (
    <section className="plate">
      <h2>{BALL_LOG.fade}</h2>
      {drawn === null ? (
        <p className="nothing">{BALL_LOG.fadeUnknown}</p>
      ) : (
        <>
          <Picture svg={drawn.svg} className="fade-chart" />
          <ul>
            {due(BALL_LOG.refresh, drawn.care.refresh)}
            {due(BALL_LOG.extraction, drawn.care.extraction)}
            {due(BALL_LOG.resurfacing, drawn.care.resurfacing)}
          </ul>
          <p className="note">
            {BALL_LOG.fadeNote} {BALL_LOG.ofAllGames}.
          </p>
        </>
      )}
    </section>
  );
}

function fadeOf(ball: Ball) {
  const bench = benchBallOf(ball);
  const allGames = ball.games.reduce((sum, { games }) => sum + games, 0);
  const care = careOf({
    cover: bench.cover,
    startUm: freshRoughness(bench, assume()),
    gamesSince: bench.gamesSince,
    gamesSinceExtraction: allGames,
    gamesSinceResurfacing: allGames,
    abrasiveness: 1,
    readings: [],
  });
  const { track, offTrack } = care;
  return {
    care,
    svg: fadeChart({ name: ball.name, track, offTrack, readings: [], gamesNow: Math.min(100, bench.gamesSince) }, PAGE_PAINT),
  };
}
