import type { FilmMap } from "#engine/lane/filmMap";
import { type Comparison, compare, type Scored, worldsOf } from "#engine/planning/comparison";
import { type Ground, groundIn, usualQuality, volleyOn } from "#engine/planning/ground";
import { lineMap } from "#engine/planning/lineMap";
import type { PlanQuestion } from "#engine/planning/question";
import { chosen, filmFound, STAGES, type Stage, scoreOf, wornBy } from "#engine/planning/session";
import { scoreWorlds, type Wanted, wantedOf } from "#engine/planning/steps";
import type { WorldBlock } from "#engine/planning/worldScores";
import { type Finish, finishText } from "#engine/surface/finish";
import { ensemble } from "#engine/worlds/ensemble";

/** What a plan says, in few worlds and in all of them, and how far its maps are from those of every node. */
export interface Compared {
  readonly few: Comparison<Scored>;
  readonly all: Comparison<Scored>;
  /** Of a finish in a world, strikes 0–1: by every node, against those near the pins. */
  readonly nodesOff: readonly number[];
}

/** @param worlds in how many a plan is computed @param of in how many at most @param nodesIn in how many worlds every node is thrown */
export function comparedIn(question: PlanQuestion, worlds: number, of: number, nodesIn: number): Compared {
  const wanted = wantedOf(question);
  const block = (to: number) => scoreWorlds(question, wanted, "session", 0, to);
  const [few, all] = [block(worlds), block(Math.min(of, ensemble().worlds.length))];
  return {
    few: verdictOf(few, wanted, question),
    all: verdictOf(all, wanted, question),
    nodesOff: nodesOff(question, wanted, few, nodesIn),
  };
}

function verdictOf(block: WorldBlock, { finishes, metric }: Wanted, question: PlanQuestion): Comparison<Scored> {
  const shares = worldsOf([block]);
  const standings = finishes.map((finish, i): Scored => {
    const drawn = block.finishes[i].scores;
    const total = shares.weights.reduce((sum, weight) => sum + weight, 0);
    return { finish, drawn, score: drawn.reduce((sum, one, world) => sum + shares.weights[world] * one, 0) / total };
  });
  return compare(standings, shares, metric, question.ball.finish);
}

function nodesOff(question: PlanQuestion, { finishes, metric }: Wanted, block: WorldBlock, worlds: number): readonly number[] {
  return Array.from({ length: worlds }, (_, world) => {
    const ground = groundIn(ensemble().drawn(block.ids[world]), question);
    const found = filmFound(ground, metric);
    return finishes.map((finish, i) => {
      const brute = scoreOf(ground, finish, bruteSession(ground, finish, found, metric), metric);
      return block.finishes[i].scores[world] - brute;
    });
  }).flat();
}

/** As the plan's own session, but every node is thrown and none is left out beforehand. */
function bruteSession(ground: Ground, finish: Finish, found: FilmMap, metric: Wanted["metric"]): readonly Stage[] {
  const { question, assumed, carry } = ground;
  const session: Stage[] = [];
  let film = found;
  for (let stage = 0; stage < STAGES; stage++) {
    const map = lineMap(volleyOn(film, question, finish, assumed), usualQuality(question), carry, question.limits, true);
    const choice = chosen(map, question.limits, metric);
    session.push({ film, map, choice });
    film = wornBy(ground, finish, film, choice, SHOTS_A_STAGE);
  }
  return session;
}

/** As the session has it. */
const SHOTS_A_STAGE = 20;

/** The finishes that cannot be told apart, as text. */
export function tiedOf({ standings, plateau: [first, last] }: Comparison<Scored>): readonly string[] {
  return standings.slice(first, last + 1).map(({ finish }) => finishText(finish));
}

export function pickOf({ standings, pick }: Comparison<Scored>): string {
  return finishText(standings[pick].finish);
}
