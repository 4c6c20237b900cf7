import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Pattern } from "#contract/records/place";
import type { Json } from "../../jobFile/jobDraft.ts";
import { bowlerOfJob, jobOfTicket } from "../../jobFile/jobOfTicket.ts";
import { figureOrNull } from "../../shop/typedValues.ts";

/** The form as it was typed. */
export interface OilInPlayDraft {
  readonly others: string;
  readonly leftHanders: string;
  readonly games: string;
  readonly lanes: "1" | "2";
  /** The ball of the one who is known; its owner bowls. */
  readonly ballId: string | null;
}

/** A league of eight on a pair: what most oil is for. */
export const USUAL_SESSION: OilInPlayDraft = { others: "8", leftHanders: "1", games: "3", lanes: "2", ballId: null };

export interface KnownPlayer {
  readonly ball: Ball;
  readonly bowler: Bowler | null;
}

/** The transition file that the form stands for. What is no figure stays as it was typed, for the file's own checks to answer. */
export function transitionFileOf(draft: OilInPlayDraft, pattern: Pattern, known: KnownPlayer | null): Json {
  return {
    gritwright: 1,
    lane: pattern.oil as Json,
    games: figureOrNull(draft.games),
    lanes: Number(draft.lanes),
    ...(known === null ? {} : { players: [playerOf(known)] }),
    others: { bowlers: figureOrNull(draft.others), leftHanders: figureOrNull(draft.leftHanders) ?? 0 },
  };
}

function playerOf({ ball, bowler }: KnownPlayer): Json {
  const { ball: thrown } = jobOfTicket(ball, bowler);
  return {
    bowler: bowlerOfJob(bowler),
    ball: thrown,
  };
}
