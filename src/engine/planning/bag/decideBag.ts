import { ASSUMPTIONS, type AssumptionId, assume } from "../../assumptions.ts";
import { knownCover } from "../../ball/ball.ts";
import type { Message } from "../../message.ts";
import { finishText } from "../../surface/finish.ts";
import { band } from "../comparison.ts";
import type { AssumptionUse, Interval } from "../plan.ts";
import { mean } from "../session.ts";
import type { BagBallPlan, BagMessageId, BagPlace, BagPlan, BagReasonId, BagStage, BagStretch } from "./bagPlan.ts";
import { type Chosen, choose, type Rival, runnerUp, type WaysProblem } from "./choose.ts";
import type { BagOil } from "./films.ts";
import { budgetsOf, type RatedState, type WayOption, waysOf } from "./options.ts";
import { type BagQuestion, framesAStage, ownWearMatters, ratedStages, stageCount } from "./question.ts";
import { gapsOf, type ReferenceWorth } from "./references.ts";
import { sameState, statesOf, strikes, workedAs } from "./states.ts";
import { surfaceWord } from "./surfaceWord.ts";
import { bagAssumptions, ballChangeCost, type StageWorth, worthOn } from "./worth.ts";

/** What a bag plan is decided from. */
export interface BagFound {
  readonly oil: BagOil;
  readonly rated: readonly RatedState[];
  readonly references: readonly ReferenceWorth[];
}

/** The plan, and which ball in which of its states is thrown at each stage: what the oil is then played with. */
export interface BagDecision {
  readonly plan: BagPlan;
  readonly thrown: readonly { readonly ball: number; readonly state: number }[];
}

/** Two strikes in a hundred make no difference, as in the finish plan. */
const AS_GOOD_SHARE = 0.02;
/** Below this chance there is no line worth the name, as in the finish plan. */
const SENSIBLE_CHANCE = 0.05;
const SURE_FROM = 0.9;
const LIKELY_FROM = 0.7;
/** Two balls that lie closer than this on the axes, and neither of which is missed, overlap. */
const NEAR_FT = 1.5;
const NEAR_DEG = 0.3;
/** Seen from the approach: feet of hook start, degrees of entry. */
const SEEN_FT = 1;
const SEEN_DEG = 0.2;

/** The bag plan from what was rated and drawn: states without draws count as they stand. */
export function decideBag(question: BagQuestion, found: BagFound): BagDecision {
  const problem = problemOf(question, found.rated);
  const frames = framesAStage(question.session) * stageCount(question.session);
  const chosen = choose(problem, AS_GOOD_SHARE * frames);
  if (chosen === null) return { plan: emptyPlan(question, frames), thrown: [] };
  const answer = new Answer(question, problem, chosen, found);
  const { sureShare } = chosen;
  const plan: BagPlan = {
    metric: "expectedStrikes",
    frames,
    strikes: answer.strikes(),
    changes: answer.changes,
    stages: answer.stages(),
    balls: question.balls.map((_, ball) => answer.ball(ball)),
    stretches: answer.stretches(),
    againstNoWork: chosen.noWork && gainOf(chosen.best, chosen.noWork),
    againstOneBall: chosen.oneBall && answer.againstOneBall(chosen.oneBall),
    mostPossible:
      chosen.top === chosen.best
        ? null
        : { gain: gainOf(chosen.top, chosen.best), minutes: chosen.top.minutes, changes: chosen.top.changes },
    sure: sureShare >= SURE_FROM ? "sure" : sureShare >= LIKELY_FROM ? "likely" : "unsure",
    sureShare,
    gaps: answer.gaps,
    surfaceWord: surfaceWord(question),
    minutes: chosen.best.minutes,
    messages: answer.messages(),
    assumptions: assumptionsUsed(question),
  };
  return { plan, thrown: answer.thrown() };
}

function problemOf(question: BagQuestion, rated: readonly RatedState[]): WaysProblem {
  return {
    ways: question.balls.map((_, ball) =>
      waysOf(
        question,
        rated.filter(({ state }) => state.ball === ball),
      ),
    ),
    stages: stageCount(question.session),
    changeCost: ballChangeCost(question),
    budgets: budgetsOf(question),
  };
}

/** A difference of two plans, draw by draw: far narrower than that of their levels. */
function gainOf(one: Rival, other: Rival): Interval {
  const drawn = one.drawn.map((worth, draw) => worth - other.drawn[draw]);
  const value = mean(drawn);
  return { value, ...band(drawn, value) };
}

/** Reads one chosen plan out into its parts. */
class Answer {
  readonly gaps: BagPlan["gaps"];
  readonly #question: BagQuestion;
  readonly #problem: WaysProblem;
  readonly #chosen: Chosen;
  readonly #found: BagFound;

  constructor(question: BagQuestion, problem: WaysProblem, chosen: Chosen, found: BagFound) {
    this.#question = question;
    this.#problem = problem;
    this.#chosen = chosen;
    this.#found = found;
    this.gaps = gapsOf(question, found.rated, found.references);
  }

  get #sequence(): readonly number[] {
    return this.#chosen.best.choice.sequence;
  }

  get changes(): number {
    return this.#sequence.filter((ball, stage) => stage > 0 && this.#sequence[stage - 1] !== ball).length;
  }

  #way(ball: number): WayOption | null {
    const option = this.#chosen.best.choice.options[ball];
    return option === null ? null : this.#problem.ways[ball][option];
  }

  #name(ball: number): string {
    return this.#question.balls[ball].ball.name;
  }

  thrown(): BagDecision["thrown"] {
    return this.#sequence.flatMap((ball) => {
      const way = this.#way(ball);
      if (way === null) return [];
      return [{ ball, state: statesOf(this.#question, ball).findIndex((state) => sameState(state, way.rated.state)) }];
    });
  }

  strikes(): Interval {
    const cost = this.#problem.changeCost * this.changes;
    const drawn = this.#chosen.best.drawn.map((worth) => worth + cost);
    const value = mean(drawn);
    return { value, ...band(drawn, value) };
  }

  stages(): readonly BagStage[] {
    const { stagesAGame } = this.#question.session;
    const frames = framesAStage(this.#question.session);
    return this.#sequence.flatMap((ball, stage): BagStage[] => {
      const way = this.#way(ball);
      if (way === null) return [];
      const { line, shot } = this.#worthAt(way, stage);
      const drawn = way.drawn.map((row) => row[stage] / frames);
      const value = mean(drawn);
      return [
        {
          game: 1 + Math.floor(stage / stagesAGame),
          part: 1 + (stage % stagesAGame),
          ball: this.#name(ball),
          ...workedAs(way.rated.state),
          line,
          hookStartFt: shot?.hookStartFt ?? null,
          entryAngleDeg: shot?.entryAngleDeg ?? null,
          chance: { value, ...band(drawn, value) },
          oilMl: this.#found.oil.oilMl[stage],
        },
      ];
    });
  }

  /** What was rated, or for a stage between, what a ball does on the film of that stage. */
  #worthAt({ rated }: WayOption, stage: number): StageWorth {
    const at = ratedStages(this.#question.session).indexOf(stage);
    if (at >= 0) return rated.worth[at];
    const [worth] = worthOn(this.#question, rated.state, [this.#found.oil.films[stage]]);
    return worth;
  }

  ball(ball: number): BagBallPlan {
    const own = this.#question.balls[ball];
    const way = this.#way(ball);
    const rated = way?.rated ?? this.#found.rated.find(({ state }) => state.ball === ball) ?? null;
    const without = this.#chosen.without[ball];
    const { touch } = way ?? { touch: null };
    return {
      name: own.ball.name,
      cover: knownCover(own.ball),
      today: finishText(own.ball.finish),
      ...(rated === null ? { finish: finishText(own.ball.finish), asItLies: true } : workedAs(rated.state)),
      minutes: way?.rated.state.minutes ?? 0,
      byHand: touch && {
        beforeGame: 1 + touch.beforeStage / this.#question.session.stagesAGame,
        number: touch.number,
        minutes: touch.minutes,
      },
      role: way !== null ? "thrown" : strikes(own) ? "notNeeded" : "aside",
      stages: this.#sequence.filter((thrown) => thrown === ball).length,
      lostWithout: without && gainOf(this.#chosen.best, without),
      atFirst: rated && placeOf(rated.worth[0]),
      atLast: rated && placeOf(rated.worth[rated.worth.length - 1]),
    };
  }

  stretches(): readonly BagStretch[] {
    const found: BagStretch[] = [];
    let from = 0;
    this.#sequence.forEach((ball, stage) => {
      if (this.#sequence[stage + 1] === ball) return;
      found.push(this.#stretch(ball, from, stage));
      from = stage + 1;
    });
    return found;
  }

  #stretch(ball: number, from: number, to: number): BagStretch {
    const way = this.#way(ball);
    const other = runnerUp(this.#problem, this.#chosen.best.choice, from, to);
    const second = other && this.#problem.ways[other.ball][other.option];
    const middle = this.#middleOf(from, to);
    const shot = second?.rated.worth[middle].shot ?? null;
    return {
      fromStage: from,
      toStage: to,
      ball: this.#name(ball),
      ...(way === null ? { finish: "", asItLies: true } : workedAs(way.rated.state)),
      runnerUp: other &&
        second && {
          ball: this.#name(other.ball),
          ...workedAs(second.rated.state),
          hookStartFt: shot?.hookStartFt ?? null,
          entryAngleDeg: shot?.entryAngleDeg ?? null,
        },
      gain: way && second && overStretch(way, second, from, to),
      reasons: way && second ? reasonsOf(way, second, middle, overStretch(way, second, from, to).value) : [],
    };
  }

  /** Place among the rated stages that lies nearest to a stretch's middle. */
  #middleOf(from: number, to: number): number {
    const middle = (from + to) / 2;
    const rated = ratedStages(this.#question.session);
    return rated.reduce((best, stage, at) => (Math.abs(stage - middle) < Math.abs(rated[best] - middle) ? at : best), 0);
  }

  againstOneBall(one: Rival): BagPlan["againstOneBall"] {
    const ball = one.choice.sequence[0];
    const way = this.#problem.ways[ball][one.choice.options[ball] ?? 0];
    return { ball: this.#name(ball), ...workedAs(way.rated.state), gain: gainOf(this.#chosen.best, one) };
  }

  messages(): readonly Message<BagMessageId>[] {
    const { session } = this.#question;
    const said: Message<BagMessageId>[] = [];
    const say = (id: BagMessageId, params: Message["params"] = {}) => said.push({ id, params });
    const asGood = AS_GOOD_SHARE * framesAStage(session) * stageCount(session);
    const { noWork, oneBall, best } = this.#chosen;
    if (this.strikes().value < SENSIBLE_CHANCE * framesAStage(session) * stageCount(session)) say("bag.noLine");
    if (noWork && best.minutes > 0 && gainOf(best, noWork).value < asGood)
      say("bag.noWorkIsAsGood", { strikes: gainOf(best, noWork).value });
    if (oneBall && this.changes > 0 && gainOf(best, oneBall).value < asGood)
      say("bag.oneBallIsAsGood", { ball: this.#name(oneBall.choice.sequence[0]), strikes: gainOf(best, oneBall).value });
    for (const [first, second] of overlaps(
      this.#question.balls.map((_, ball) => this.ball(ball)),
      asGood,
    ))
      say("bag.overlap", { first, second });
    for (const { stage, cover, finish, points } of this.gaps)
      say("bag.gap", { game: 1 + Math.floor(stage / session.stagesAGame), cover, finish, points });
    if (this.gaps.length === 0 && this.#found.references.length > 0) say("bag.gapAtNone");
    const word = surfaceWord(this.#question);
    if (word.before === "ask") say("bag.workAsk");
    if (word.practice !== "yes") say("bag.practiceNotAllowed", { answer: word.practice });
    if (word.betweenGames !== "yes") say("bag.betweenNotAllowed", { answer: word.betweenGames });
    if (ownWearMatters(this.#question)) say("bag.ownWear");
    return said;
  }
}

function placeOf({ shot, chance }: StageWorth): BagPlace | null {
  return shot === null || shot.hookStartFt === null ? null : { hookStartFt: shot.hookStartFt, entryAngleDeg: shot.entryAngleDeg, chance };
}

function overStretch(way: WayOption, other: WayOption, from: number, to: number): Interval {
  const over = (row: readonly number[]) => row.slice(from, to + 1).reduce((sum, strikes) => sum + strikes, 0);
  const drawn = way.drawn.map((row, draw) => over(row) - over(other.drawn[draw % other.drawn.length]));
  const value = mean(drawn);
  return { value, ...band(drawn, value) };
}

/** What one would see from the approach, in the middle of the stretch; each ball on its own line. */
function reasonsOf(way: WayOption, other: WayOption, middle: number, gain: number): readonly Message<BagReasonId>[] {
  const [own, second] = [way.rated.worth[middle].shot, other.rated.worth[middle].shot];
  if (second === null) return [{ id: "bag.runnerUpHasNoLine", params: {} }];
  if (own === null) return [];
  const said: Message<BagReasonId>[] = [];
  if (own.hookStartFt !== null && second.hookStartFt !== null) {
    const feet = own.hookStartFt - second.hookStartFt;
    if (Math.abs(feet) >= SEEN_FT) said.push({ id: feet < 0 ? "bag.earlier" : "bag.later", params: { feet: Math.abs(feet) } });
  }
  const steeper = own.entryAngleDeg - second.entryAngleDeg;
  if (Math.abs(steeper) >= SEEN_DEG) said.push({ id: steeper > 0 ? "bag.steeper" : "bag.flatter", params: { degrees: Math.abs(steeper) } });
  if (gain < 0) said.push({ id: "bag.staysToSaveAChange", params: {} });
  return said.length > 0 ? said : [{ id: "bag.alike", params: {} }];
}

/** Pairs that do the same on the first oil and are not missed: leaving one of them at home costs nothing to speak of. */
function overlaps(balls: readonly BagBallPlan[], asGood: number): readonly (readonly [string, string])[] {
  return balls.flatMap((first, i) =>
    balls.slice(i + 1).flatMap((second) => {
      const [a, b] = [first.atFirst, second.atFirst];
      if (a === null || b === null) return [];
      const isNear = Math.abs(a.hookStartFt - b.hookStartFt) < NEAR_FT && Math.abs(a.entryAngleDeg - b.entryAngleDeg) < NEAR_DEG;
      const isMissed = [first, second].every(({ lostWithout }) => lostWithout !== null && lostWithout.value >= asGood);
      return isNear && !isMissed ? [[first.name, second.name] as const] : [];
    }),
  );
}

/** Nothing to choose: every ball is for spares or of the house. */
function emptyPlan(question: BagQuestion, frames: number): BagPlan {
  return {
    metric: "expectedStrikes",
    frames,
    strikes: null,
    changes: 0,
    stages: [],
    balls: [],
    stretches: [],
    againstNoWork: null,
    againstOneBall: null,
    mostPossible: null,
    sure: "unsure",
    sureShare: 0,
    gaps: [],
    surfaceWord: surfaceWord(question),
    minutes: 0,
    messages: [{ id: "bag.onlyAside", params: {} }],
    assumptions: assumptionsUsed(question),
  };
}

/** What the plan rests on: that of every ball's chances, the others on the lane, and the price of a change. */
function assumptionsUsed(question: BagQuestion): readonly AssumptionUse[] {
  const assumed = assume(question.assumptions);
  const ids: readonly AssumptionId[] = [
    ...bagAssumptions(question),
    "play.shotsAGame",
    "play.fieldSpeed",
    "play.fieldRevs",
    "play.fieldVariety",
    "play.ballChange",
  ];
  return ids.map((id) => {
    const { low, high, unit, mark, source } = ASSUMPTIONS[id];
    return { id, value: assumed[id], low, high, unit, mark, source };
  });
}
