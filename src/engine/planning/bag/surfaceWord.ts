import { type SurfaceAnswer, surfaceRules } from "../../rules/events.ts";
import type { BagQuestion } from "./question.ts";

/** What the book, or the event, says of abrasives at the moments at which a bag plan could use them. */
export interface SurfaceWord {
  readonly before: SurfaceAnswer;
  readonly practice: SurfaceAnswer;
  readonly betweenGames: SurfaceAnswer;
}

export function surfaceWord({ rules }: BagQuestion): SurfaceWord {
  const said = surfaceRules(rules.book, rules.on, rules.event).filter(({ act }) => act === "abrasive");
  const at = (moment: string) => said.find((rule) => rule.moment === moment)?.answer ?? "ask";
  return { before: at("before"), practice: at("practice"), betweenGames: at("betweenGames") };
}
