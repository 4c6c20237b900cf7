import { knownCover } from "../ball/ball.ts";
import { speedClass, spinRatio } from "../delivery/style.ts";
import { CELL_Y, volumeMl } from "../lane/filmMap.ts";
import { xToBoard } from "../lane/geometry.ts";
import type { Message } from "../message.ts";
import { trackOf } from "../motion/track.ts";
import { oilClass, type RuleAnswer, type RuleCase } from "../rules/ruleCase.ts";
import { RULE_IDS, RULES_OF_THUMB, type RuleId, type RuleOfThumb } from "../rules/rulesOfThumb.ts";
import { effectiveRaUm, finishText, parseFinish } from "../surface/finish.ts";
import { FOOT } from "../units.ts";
import type { Comparison } from "./comparison.ts";
import { type Ground, throwerOn } from "./ground.ts";
import type { RULE_WHYS } from "./messageIds.ts";
import type { Candidate, RuleVerdict } from "./plan.ts";
import { meanShot } from "./rating.ts";

/** Every rule of thumb that speaks to this case, with whether the computation agrees and, where it does not, why. */
export function ruleVerdicts(
  ground: Ground,
  comparison: Comparison,
  candidates: readonly Candidate[],
  picked: boolean,
): readonly RuleVerdict[] {
  const asked = caseOf(ground, comparison);
  const answer = answerOf(ground, comparison, picked, asked);
  return RULE_IDS.flatMap((id) => {
    const rule: RuleOfThumb = RULES_OF_THUMB[id];
    if (!rule.applies(asked)) return [];
    const agrees = rule.agrees(answer, asked);
    if (agrees === null) return [];
    const params = { from: rule.range?.[0] ?? "", to: rule.range?.[1] ?? "", board: asked.lengthFt - 31, lengthFt: asked.lengthFt };
    return [
      {
        rule: id,
        agrees,
        message: { id: `rule.${id}`, params },
        why: agrees ? null : whyNot(id, rule, answer, candidates[comparison.pick], candidates),
      },
    ];
  });
}

function caseOf({ question }: Ground, { standings }: Comparison): RuleCase {
  const { bowler, ball, lane } = question;
  const { found } = standings[0].rating;
  return {
    cover: knownCover(ball),
    job: ball.job,
    speedClass: speedClass(spinRatio(bowler.speedMph, bowler.revRateRpm, ball.diameterIn)),
    speedMph: bowler.speedMph,
    oil: oilClass(volumeMl(found)),
    playedShots: lane.playedShots,
    lengthFt: found.lengthFt,
  };
}

function answerOf(ground: Ground, comparison: Comparison, picked: boolean, asked: RuleCase): RuleAnswer {
  const { standings, plateau, pick } = comparison;
  const { line } = standings[pick].rating;
  return {
    pick: picked ? standings[pick].finish : null,
    plateau: picked ? standings.slice(plateau[0], plateau[1] + 1).map((standing) => standing.finish) : [],
    onOneLine: standings.map(({ finish, rating }) => ({
      finish,
      hookStartFt: line && meanShot(throwerOn(rating.found, ground.question, finish, ground.assumed), line).hookStartFt,
    })),
    exitBoard: exitBoardOf(ground, comparison, pick, asked.lengthFt),
  };
}

function exitBoardOf({ question, assumed }: Ground, { standings }: Comparison, pick: number, lengthFt: number): number | null {
  const { rating, finish } = standings[pick];
  if (rating.line === null) return null;
  const track = trackOf(throwerOn(rating.found, question, finish, assumed), rating.line);
  return xToBoard(track.x[Math.round((lengthFt * FOOT) / CELL_Y)]);
}

function whyNot(
  id: RuleId,
  rule: RuleOfThumb,
  answer: RuleAnswer,
  pick: Candidate,
  candidates: readonly Candidate[],
): Message<(typeof RULE_WHYS)[number]> {
  if (id === "exitBoard") return { id: "why.exitBoard", params: { exitBoard: answer.exitBoard ?? 0 } };
  if (id === "dullerIsEarlier") return { id: "why.ordering", params: {} };
  const asked = rule.range && rangeOfRa(rule.range);
  if (rule.range && asked && answer.plateau.some((finish) => within(effectiveRaUm(finish), asked))) {
    return { id: "why.plateauReaches", params: { pick: pick.finish, from: rule.range[0], to: rule.range[1] } };
  }
  if (id === "urethaneRange") return { id: "why.urethane", params: { pick: pick.finish } };
  const points = (candidate: Candidate) => 100 * (candidate.missLoss?.halfDegree ?? 0);
  const most = rule.range ? effectiveRaUm(parseFinish(rule.range[0])) : 0;
  const smooth = candidates[candidates.length - 1];
  return answer.plateau.some((finish) => effectiveRaUm(finish) > most)
    ? {
        id: "why.dullerKeepsWindow",
        params: { pick: pick.finish, smoothFinish: smooth.finish, points: points(smooth), pickPoints: points(pick) },
      }
    : {
        id: "why.smootherStillHooks",
        params: {
          pick: finishText(answer.plateau[0] ?? parseFinish(pick.finish)),
          points: points(pick),
          entryDeg: pick.entryAngleDeg ?? 0,
        },
      };
}

type RaRange = readonly [most: number, least: number];

function rangeOfRa([from, to]: readonly [string, string]): RaRange {
  return [effectiveRaUm(parseFinish(from)) + 1e-9, effectiveRaUm(parseFinish(to)) - 1e-9];
}

function within(ra: number, [most, least]: RaRange): boolean {
  return ra <= most && ra >= least;
}
