import { type Assumed, assume } from "../../assumptions.ts";
import { effectiveRaOfReadingUm, effectiveRaUm } from "../../surface/finish.ts";
import { PADS } from "../../surface/pads.ts";
import { mean } from "../session.ts";
import type { BagOption } from "./optimum.ts";
import { atStage, type BagQuestion, framesAStage, ratedStages, stageCount } from "./question.ts";
import { type BallState, handMinutes } from "./states.ts";
import { surfaceWord } from "./surfaceWord.ts";
import type { StageWorth, StateDraws } from "./worth.ts";

/** A state with what it is worth at each rated stage. */
export interface RatedState {
  readonly state: BallState;
  readonly worth: readonly StageWorth[];
  /** Null as long as it has not been drawn. */
  readonly draws: StateDraws | null;
}

/** A pad by hand at the lane, once in the session: in practice (before stage 0), or in the break before a stage. */
export interface Touch {
  readonly beforeStage: number;
  readonly number: number;
  readonly minutes: number;
}

/** One way of working a ball through the session. */
export interface WayOption extends BagOption {
  readonly rated: RatedState;
  readonly touch: Touch | null;
  /** Expected strikes at each stage, under each draw; one row, the mean, where nothing was drawn. */
  readonly drawn: readonly (readonly number[])[];
}

/** Budgets of the problem: bench time, hand time in practice, hand time in each break. */
export function budgetsOf({ work, session }: BagQuestion): readonly number[] {
  return [work.minutesBefore, work.minutesInPractice, ...Array.from({ length: session.games - 1 }, () => work.minutesBetweenGames)];
}

/** Numbers of the pads that are carried to the lane. */
const HAND_PADS: readonly number[] = PADS.filter(({ atLane }) => atLane).map(({ number }) => number);

/** Every way of working one ball, from its states and, where the rules allow it, one pad by hand at the lane. */
export function waysOf(question: BagQuestion, states: readonly RatedState[]): readonly WayOption[] {
  const table = strikesTable(question, states);
  const nothing = budgetsOf(question).map(() => 0);
  return states.flatMap((rated, i): WayOption[] => {
    const uses = nothing.with(0, rated.state.minutes);
    const plain: WayOption = { rated, touch: null, uses, drawn: table[i], worth: meanRow(table[i]) };
    return [plain, ...touchesOf(question, rated).flatMap((touch) => touched(question, states, table, plain, touch))];
  });
}

/** Strikes by state, draw and stage. */
function strikesTable({ session }: BagQuestion, states: readonly RatedState[]): readonly (readonly (readonly number[])[])[] {
  const frames = framesAStage(session);
  const stages = Array.from({ length: stageCount(session) }, (_, stage) => stage);
  return states.map(({ worth, draws }) => {
    const own = worth.map(({ chance }) => chance);
    // What a draw differs by from the same reckoning at the centre is added to the map's own chance, as in the finish plan.
    const rows = draws === null ? [own] : draws.drawn.map((row) => row.map((chance, at) => own[at] + chance - draws.centre[at]));
    const held = rows.map((row) => row.map((chance, at) => (own[at] === 0 ? 0 : frames * Math.min(1, Math.max(0, chance)))));
    return held.map((row) => stages.map((stage) => atStage(session, row, stage)));
  });
}

function touchesOf(question: BagQuestion, { state }: RatedState): readonly Touch[] {
  const { work, session } = question;
  const word = surfaceWord(question);
  const moments = [
    ...(word.practice === "yes" && work.minutesInPractice > 0 ? [0] : []),
    ...(word.betweenGames === "yes" && work.minutesBetweenGames > 0
      ? Array.from({ length: session.games - 1 }, (_, game) => (game + 1) * session.stagesAGame)
      : []),
  ];
  const pads = HAND_PADS.filter((number) => work.numbers === null || work.numbers.includes(number));
  return moments.flatMap((beforeStage) =>
    pads.map((number) => ({ beforeStage, number, minutes: handMinutes(question.balls[state.ball], number) })),
  );
}

/** Work by hand gets only part of the way to the pad's own roughness; what the ball is then worth lies between its states of more and of less roughness. */
function touched(
  question: BagQuestion,
  states: readonly RatedState[],
  table: readonly (readonly (readonly number[])[])[],
  plain: WayOption,
  touch: Touch,
): WayOption[] {
  const assumed = assume(question.assumptions);
  const from = roughness(plain.rated.state, assumed);
  const reach = assumed["work.handReach"];
  const to = from ** (1 - reach) * effectiveRaUm({ number: touch.number, polished: false }, assumed) ** reach;
  const after = between(states, table, to, assumed);
  if (after === null) return [];
  const budget = touch.beforeStage === 0 ? 1 : 1 + touch.beforeStage / question.session.stagesAGame;
  const drawn = plain.drawn.map((row, draw) =>
    row.map((strikes, stage) => (stage < touch.beforeStage ? strikes : after[draw % after.length][stage])),
  );
  return [{ ...plain, touch, uses: plain.uses.with(budget, touch.minutes), drawn, worth: meanRow(drawn) }];
}

function roughness({ as, finish }: BallState, assumed: Assumed): number {
  return as.raMicroinch === null ? effectiveRaUm(finish, assumed) : effectiveRaOfReadingUm(as.raMicroinch, assumed);
}

/** Strikes by draw and stage at a roughness between two rated states, straight in its logarithm; null beyond them. */
function between(
  states: readonly RatedState[],
  table: readonly (readonly (readonly number[])[])[],
  ra: number,
  assumed: Assumed,
): readonly (readonly number[])[] | null {
  const order = states.map(({ state }, i) => ({ i, ra: roughness(state, assumed) })).sort((a, b) => a.ra - b.ra);
  const upper = order.findIndex((one) => one.ra >= ra);
  if (upper <= 0) return null;
  const [low, high] = [order[upper - 1], order[upper]];
  const share = Math.log(ra / low.ra) / Math.log(high.ra / low.ra);
  return table[low.i].map((row, draw) => row.map((strikes, stage) => strikes + share * (table[high.i][draw][stage] - strikes)));
}

function meanRow(rows: readonly (readonly number[])[]): readonly number[] {
  return rows[0].map((_, stage) => mean(rows.map((row) => row[stage])));
}

/** Whether a state can come into the choice at all: near the best at some stage, or as the ball lies. Others need no draws. */
export function worthDrawing(question: BagQuestion, rated: readonly RatedState[]): readonly RatedState[] {
  const best = ratedStages(question.session).map((_, at) => Math.max(...rated.map(({ worth }) => worth[at].chance)));
  return rated.filter(({ state, worth }) => state.isToday || worth.some(({ chance }, at) => chance >= best[at] - NEAR));
}

/** A state that is nowhere within so much of the best is left out: three strikes in a hundred. */
const NEAR = 0.03;
