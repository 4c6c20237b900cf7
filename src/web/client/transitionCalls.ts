import { checkFile } from "#contract/job/checkJob";
import { JobFault } from "#contract/problem";
import { transitionDocumentOf } from "#contract/transitionDocument";
import { resolveTransition, transitionFileSchema } from "#contract/transitionFile";
import { laneChart } from "#drawing/laneChart";
import type { Layout } from "#drawing/laneFrame";
import { PAGE_PAINT } from "#drawing/paint";
import { transitionChart } from "#drawing/transitionChart";
import { transitionMoments } from "#drawing/transitionMoments";
import { EngineFault } from "#engine/fault";
import { toFilmSheet } from "#engine/lane/filmMap";
import { fieldProblem } from "./planRequest.ts";
import type { PlayedGame, PlayedLanes, TransitionRequest, TwoLayouts } from "./protocol.ts";

/** Reads a lane in play as it stands in the form: every problem at once, or the question. */
export function transitionRequest(file: unknown): TransitionRequest {
  try {
    return { kind: "question", ...resolveTransition(checkFile(transitionFileSchema, file)) };
  } catch (error) {
    if (error instanceof JobFault || error instanceof EngineFault)
      return { kind: "problems", problems: error.problems.map((problem) => fieldProblem(problem)) };
    throw error;
  }
}

/** The last of some lanes in play, on the whole chart and in figures. */
export function drawPlayedGame({ question, lanes }: PlayedLanes, title: string): PlayedGame {
  const document = transitionDocumentOf({ question, defaults: [] }, lanes, null, "");
  const { hand } = question.players[0].bowler;
  const last = lanes[lanes.length - 1];
  const film = toFilmSheet(last.film);
  const played = last.players.map(({ boards }, i) => ({ hand: question.players[i].bowler.hand, boards }));
  const draw = (layout: Layout) =>
    laneChart({ film, hand, courses: [], played, title }, { layout, paint: PAGE_PAINT, id: `played-${layout}` });
  return { title, lane: { lying: draw("lying"), upright: draw("upright") }, game: document.games[document.games.length - 1] };
}

/** All of it side by side: one still strip of lane each. */
export function drawPlayedStrips({ question, lanes }: PlayedLanes): TwoLayouts {
  const input = { hand: question.players[0].bowler.hand, moments: transitionMoments(question, lanes) };
  const draw = (layout: Layout) => transitionChart(input, { layout, paint: PAGE_PAINT, id: `strips-${layout}` });
  return { lying: draw("lying"), upright: draw("upright") };
}
