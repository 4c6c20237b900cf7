import { mean } from "../session.ts";
import { type BagChoice, bestChoice } from "./optimum.ts";
import type { WayOption } from "./options.ts";

/** The problem with its ways, ball by ball. */
export interface WaysProblem {
  readonly ways: readonly (readonly WayOption[])[];
  readonly stages: number;
  readonly changeCost: number;
  readonly budgets: readonly number[];
}

/** A plan that could be chosen, and what it is worth under every draw. */
export interface Rival {
  readonly choice: BagChoice;
  /** Expected strikes less what changes cost, draw by draw. */
  readonly drawn: readonly number[];
  readonly minutes: number;
  readonly changes: number;
}

/** What was chosen, against what else there is. */
export interface Chosen {
  readonly best: Rival;
  /** The best mean of all, whatever work and changes it takes. */
  readonly top: Rival;
  /** Share of the draws in which the choice is as good as the best for that draw. */
  readonly sureShare: number;
  /** Without any work: every ball as it lies. Null where no ball can be thrown so. */
  readonly noWork: Rival | null;
  /** One ball all through. */
  readonly oneBall: Rival | null;
  /** By ball: the best that could be done without it; null for a ball that is not thrown, and where nothing is left. */
  readonly without: readonly (Rival | null)[];
}

/**
 * The choice. Of the plans within a third of `asGood` strikes of the best mean those that lose least in the quarter of the draws in which they
 * lose most, half of `asGood` allowed; of these the one with the least work, then with the fewest changes, then the best mean. What there is to choose from: the best plan, the best without each ball it throws, with each other
 * way of working those balls, without work, with one ball, and the best plan of every single draw.
 *
 * @param asGood strikes that make no difference
 * @returns null where no ball has a way that fits
 */
export function choose(problem: WaysProblem, asGood: number): Chosen | null {
  const first = solve(problem);
  if (first === null) return null;
  const thrown = first.options.flatMap((option, ball) => (option === null ? [] : [ball]));
  const without = problem.ways.map((_, ball) => (thrown.includes(ball) ? solve(only(problem, (_way, other) => other !== ball)) : null));
  const noWork = solve(only(problem, (way) => way.uses.every((used) => used === 0)));
  const oneBall = bestOf(problem.ways.flatMap((_, ball) => solve(only(problem, (_way, other) => other === ball)) ?? []));
  const otherWays = thrown.flatMap((ball) =>
    problem.ways[ball].flatMap((way) => solve(only(problem, (other, of) => of !== ball || other === way)) ?? []),
  );
  const draws = problem.ways.flat().reduce((most, { drawn }) => Math.max(most, drawn.length), 1);
  const ofDraws = Array.from({ length: draws }, (_, draw) => solve(underDraw(problem, draw)));
  const rival = (choice: BagChoice | null) => choice && rivalOf(problem, choice, draws);
  const rivals = [first, ...without, noWork, oneBall, ...otherWays, ...ofDraws].flatMap((choice) => rival(choice) ?? []);
  const bestOfDraw = Array.from({ length: draws }, (_, draw) => Math.max(...rivals.map(({ drawn }) => drawn[draw])));
  const best = mostRobust(rivals, bestOfDraw, asGood);
  return {
    best,
    top: rivals.reduce((most, one) => (mean(one.drawn) > mean(most.drawn) ? one : most)),
    sureShare: best.drawn.filter((worth, draw) => worth >= bestOfDraw[draw] - asGood).length / draws,
    noWork: rival(noWork),
    oneBall: rival(oneBall),
    without: problem.ways.map((_, ball) =>
      best.choice.options[ball] === null ? null : rival(without[ball] ?? solve(only(problem, (_way, other) => other !== ball))),
    ),
  };
}

/** Of what makes no difference: so much less of the mean, and so much more of the losses, is given for less work. */
const NEAR = 1 / 3;
const ALIKE = 1 / 2;

function mostRobust(rivals: readonly Rival[], bestOfDraw: readonly number[], asGood: number): Rival {
  const top = Math.max(...rivals.map(({ drawn }) => mean(drawn)));
  const near = rivals
    .filter(({ drawn }) => mean(drawn) >= top - NEAR * asGood)
    .map((rival) => ({ rival, loss: worstQuarter(rival.drawn.map((worth, draw) => bestOfDraw[draw] - worth)) }));
  const least = Math.min(...near.map(({ loss }) => loss));
  const alike = near.filter(({ loss }) => loss <= least + ALIKE * asGood).map(({ rival }) => rival);
  return alike.toSorted((a, b) => a.minutes - b.minutes || a.changes - b.changes || mean(b.drawn) - mean(a.drawn))[0];
}

/** Mean of the quarter of the losses that are largest. */
function worstQuarter(losses: readonly number[]): number {
  const sorted = losses.toSorted((a, b) => b - a);
  return mean(sorted.slice(0, Math.max(1, Math.ceil(losses.length / 4))));
}

function solve({ ways, stages, changeCost, budgets }: WaysProblem): BagChoice | null {
  return bestChoice({ balls: ways, stages, changeCost, budgets });
}

function bestOf(choices: readonly BagChoice[]): BagChoice | null {
  return choices.reduce<BagChoice | null>((best, one) => (best === null || one.worth > best.worth ? one : best), null);
}

/** The problem with some ways taken out. The others keep their places, so that a choice means the same in both. */
function only(problem: WaysProblem, isLeft: (way: WayOption, ball: number) => boolean): WaysProblem {
  const never = problem.budgets.map(() => Number.POSITIVE_INFINITY);
  return { ...problem, ways: problem.ways.map((ways, ball) => ways.map((way) => (isLeft(way, ball) ? way : { ...way, uses: never }))) };
}

function underDraw(problem: WaysProblem, draw: number): WaysProblem {
  return { ...problem, ways: problem.ways.map((ways) => ways.map((way) => ({ ...way, worth: way.drawn[draw % way.drawn.length] }))) };
}

/** A choice under every draw. Ball and finish stay; which of the balls is thrown when is settled before the session too. */
function rivalOf({ ways, changeCost }: WaysProblem, choice: BagChoice, draws: number): Rival {
  const wayOf = (ball: number) => ways[ball][choice.options[ball] ?? 0];
  const changes = choice.sequence.filter((ball, stage) => stage > 0 && choice.sequence[stage - 1] !== ball).length;
  const drawn = Array.from({ length: draws }, (_, draw) =>
    choice.sequence.reduce((sum, ball, stage) => sum + rowOf(wayOf(ball), draw)[stage], -changeCost * changes),
  );
  const minutes = choice.options.reduce((sum: number, option, ball) => {
    if (option === null) return sum;
    const { rated, touch } = ways[ball][option];
    return sum + rated.state.minutes + (touch?.minutes ?? 0);
  }, 0);
  return { choice, drawn, minutes, changes };
}

function rowOf({ drawn }: WayOption, draw: number): readonly number[] {
  return drawn[draw % drawn.length];
}

/** The best sequence of the balls chosen, if one stretch were thrown with other balls than its own; for naming the runner-up. */
export function runnerUp(
  { ways, budgets }: WaysProblem,
  choice: BagChoice,
  from: number,
  to: number,
): { readonly ball: number; readonly option: number } | null {
  const thrown = choice.sequence[from];
  let best: { ball: number; option: number } | null = null;
  let most = Number.NEGATIVE_INFINITY;
  ways.forEach((own, ball) => {
    if (ball === thrown) return;
    own.forEach((way, option) => {
      // A ball that is thrown elsewhere stays as it was worked; another may be worked as is best here.
      if (choice.options[ball] !== null && choice.options[ball] !== option) return;
      if (way.uses.some((used, i) => used > budgets[i] + 1e-9)) return;
      let sum = 0;
      for (let stage = from; stage <= to; stage++) sum += way.worth[stage];
      if (sum > most) [most, best] = [sum, { ball, option }];
    });
  });
  return best;
}
