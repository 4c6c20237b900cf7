import { coverOf, knownCover } from "../ball/ball.ts";
import { EngineFault, type Problem } from "../fault.ts";
import { byRoughness, effectiveRaUm, type Finish, finishText, sameFinish } from "../surface/finish.ts";
import type { PlanQuestion } from "./question.ts";

/**
 * The finishes to compare, from dull to smooth: those named, else the cover's usual range.
 *
 * @throws EngineFault for a finish that the trade never puts on this cover, and for one outside the usual range without a stated reason.
 */
export function candidatesOf(question: PlanQuestion): readonly Finish[] {
  const { usual, neverBelow } = coverOf(question.ball.cover);
  const cover = knownCover(question.ball) ?? "a cover that is not known";
  if (question.candidates === null) return usual.toSorted(byRoughness);
  const problems: Problem[] = [];
  question.candidates.forEach((finish, i) => {
    const path = `candidates.${i}`;
    if (neverBelow !== null && finish.number < neverBelow) {
      problems.push({ path, value: finishText(finish), allowed: `${neverBelow} or more: below it is never a final finish on ${cover}` });
    } else if (question.outsideRangeReason === null && !withinUsual(finish, usual)) {
      problems.push({
        path,
        value: finishText(finish),
        allowed: `${rangeText(usual)} is usual on ${cover}; another finish needs a stated reason`,
      });
    }
  });
  if (problems.length > 0) throw new EngineFault(problems);
  return question.candidates.filter((finish, i, all) => all.findIndex((other) => sameFinish(other, finish)) === i).toSorted(byRoughness);
}

/** What has to be rated: the candidates, and today's finish, which today's line belongs to. */
export function ratingsWanted(question: PlanQuestion): readonly Finish[] {
  const candidates = candidatesOf(question);
  const { finish } = question.ball;
  return candidates.some((other) => sameFinish(other, finish)) ? candidates : [...candidates, finish].toSorted(byRoughness);
}

/** Anything between the dullest and the smoothest of the usual finishes, polished or not. */
function withinUsual(finish: Finish, usual: readonly Finish[]): boolean {
  const ra = effectiveRaUm(finish);
  const roughness = usual.map((other) => effectiveRaUm(other));
  return ra <= Math.max(...roughness) + 1e-9 && ra >= Math.min(...roughness) - 1e-9;
}

function rangeText(usual: readonly Finish[]): string {
  const sorted = usual.toSorted(byRoughness);
  return `${finishText(sorted[0])} to ${finishText(sorted[sorted.length - 1])}`;
}
