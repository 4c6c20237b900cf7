import { toFilmSheet } from "#engine/lane/filmMap";
import { filmChange } from "#engine/planning/oilInPlay/filmChange";
import type { LaneNow, PlayQuestion } from "#engine/planning/oilInPlay/session";
import { CHART } from "#words/en/charts";
import type { LaneMoment } from "./transitionChart.ts";

/** A lane in play as the chart shows it: as laid and after each game, seen by the first player. */
export function transitionMoments({ players }: PlayQuestion, lanes: readonly LaneNow[]): readonly LaneMoment[] {
  const { hand } = players[0].bowler;
  return lanes.map((lane, game) => {
    const { burn } = filmChange(lanes[0].film, lane.film, hand);
    const [first] = lane.players;
    return {
      title: game === 0 ? CHART.asLaid : CHART.afterGame(game),
      film: toFilmSheet(lane.film),
      says: [
        CHART.transitionShots(lane.shots),
        CHART.transitionOil(lane.volumeMl, lane.takenMl),
        ...(game === 0 ? [] : [CHART.transitionBurn(burn.board, 100 * burn.share)]),
        CHART.transitionLine(first.line.laydownBoard, first.line.launchAngleDeg),
      ],
      paths: lane.players.map(({ boards }, i) => ({ hand: players[i].bowler.hand, boards })),
    };
  });
}
