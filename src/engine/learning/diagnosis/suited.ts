import { isKnown } from "../../ball/ball.ts";
import { candidatesOf } from "../../planning/candidates.ts";
import { groundOf } from "../../planning/ground.ts";
import { chosen, filmFound, mapOf } from "../../planning/session.ts";
import type { Finish } from "../../surface/finish.ts";
import { freshQuestion } from "./changes.ts";
import type { Complaint } from "./complaint.ts";

/** The finish that strikes most often on fresh oil in the middle world, and by how much against the one on the ball, 0–1. */
export interface Suited {
  readonly finish: Finish;
  readonly gain: number;
}

/** Null where it cannot be asked: a ball that is not to strike, a finish or an oil that nobody knows, or no line with any finish. */
export function suitedFinish(complaint: Complaint): Suited | null {
  const { ball, lane } = complaint;
  if ((ball.job !== "strike" && ball.job !== "control") || !isKnown(ball, "finish") || lane.pattern === null) return null;
  const question = freshQuestion(complaint, lane.pattern);
  const ground = groundOf(question);
  const film = filmFound(ground);
  const scoreOf = (finish: Finish) => chosen(mapOf(ground, finish, film, "strikeChance"), question.limits, "strikeChance").score;
  const scored = candidatesOf(question).map((finish) => ({ finish, score: scoreOf(finish) }));
  const best = scored.reduce((top, one) => (one.score > top.score ? one : top));
  return best.score > 0 ? { finish: best.finish, gain: Math.max(0, best.score - scoreOf(ball.finish)) } : null;
}
