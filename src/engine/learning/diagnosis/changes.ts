import type { Assumed } from "../../assumptions.ts";
import type { Ball } from "../../ball/ball.ts";
import type { Bowler, Line } from "../../delivery/bowler.ts";
import type { FilmMap } from "../../lane/filmMap.ts";
import type { PatternSource } from "../../lane/lane.ts";
import { PATTERN_IDS } from "../../lane/patterns.ts";
import { wearLaw } from "../../lane/wear.ts";
import { averagedBall, frictionOnLane } from "../../motion/ground.ts";
import { filmPlayed, type Thrower } from "../../motion/track.ts";
import { leaveChanceAt } from "../../pins/carry.ts";
import { leaveOf } from "../../pins/leave.ts";
import { groundIn } from "../../planning/ground.ts";
import { type PlanQuestion, USUAL_LIMITS } from "../../planning/question.ts";
import { type MeanShot, meanShot } from "../../planning/rating.ts";
import { filmFound, lineNow } from "../../planning/session.ts";
import { STRAIGHT } from "../../planning/straight.ts";
import { evenPoints } from "../../random.ts";
import { fadeLaw, raAfter } from "../../surface/fade.ts";
import { effectiveRaUm, type Finish } from "../../surface/finish.ts";
import { ensemble, type World } from "../../worlds/ensemble.ts";
import type { CauseId } from "./causes.ts";
import type { BallUse, Complaint } from "./complaint.ts";
import type { StepId } from "./nextSteps.ts";

/** A shot as it would be with nothing wrong: the state that a cause changes. */
interface State {
  readonly bowler: Bowler;
  readonly ball: Ball;
  readonly raUm: number;
  readonly film: FilmMap;
  readonly assumed: Assumed;
  readonly line: Line;
}

/** What a cause does to the mean shot on the line that was played, in one world: differences to the shot with nothing wrong. */
export interface Shift {
  /** What the world counts for. */
  readonly weight: number;
  /** Positive: hooks later. */
  readonly hookFt: number;
  /** Positive: comes in higher. */
  readonly boards: number;
  /** Positive: steeper. */
  readonly entryDeg: number;
  /** Chance of the corner pin alone, after over before. */
  readonly cornerRatio: number;
}

/** So many worlds are asked, in each of them with another gravity, 0 mild to 1 grave. */
const DRAWS = 16;

/** Where nobody knows how many shots all have played on this oil: the second game. Chosen. */
const USUAL_SHOTS = 20;

type Change = (state: State, gravity: number, complaint: Complaint) => State;

/** Dry friction is lost to oil in the pores, up to so much of it; common practice: a soaked ball "dies". */
const SOAKED_LOSES = [0.06, 0.25] as const;
/** A film of lane oil and dust on the cover: like a little more oil carried. */
const DIRT_LOSES = [0.02, 0.1] as const;

const between = ([low, high]: readonly [number, number], gravity: number): number => low + (high - low) * gravity;
const withDelivery = (state: State, change: Partial<Bowler>): State => ({ ...state, bowler: { ...state.bowler, ...change } });
/** Dry friction by a factor, whatever it is in this world. */
const gripping = (state: State, factor: number): State => ({
  ...state,
  assumed: { ...state.assumed, "house.dry": state.assumed["house.dry"] * factor },
});
const scaledFilm = (state: State, factor: number): State => ({
  ...state,
  film: { ...state.film, um: state.film.um.map((um) => um * factor) },
});

/** Causes that show in the ball's motion, as changes of the model's own numbers. The ranges are **chosen**; what they do to the ball is computed. */
export const CHANGES: Readonly<Partial<Record<CauseId, Change>>> = {
  "lane.drier": (state, g) => scaledFilm(state, between([0.9, 0.6], g)),
  "lane.oilier": (state, g) => scaledFilm(state, between([1.1, 1.5], g)),
  "lane.transition": (state, g, { lane }) => played(state, Math.max(10, lane.playedShots ?? USUAL_SHOTS) * between([0.5, 1.2], g)),
  "release.slower": (state, g) => withDelivery(state, { speedMph: state.bowler.speedMph - between([0.5, 1.8], g) }),
  "release.faster": (state, g) => withDelivery(state, { speedMph: state.bowler.speedMph + between([0.5, 1.8], g) }),
  "release.lessTurn": (state, g) =>
    withDelivery(state, {
      revRateRpm: state.bowler.revRateRpm * between([0.94, 0.75], g),
      axisRotationDeg: state.bowler.axisRotationDeg - between([3, 15], g),
    }),
  "release.tired": (state, g) =>
    withDelivery(state, {
      speedMph: state.bowler.speedMph - between([0.2, 1], g),
      revRateRpm: state.bowler.revRateRpm * between([0.96, 0.78], g),
    }),
  "release.grip": (state, g) => withDelivery(state, { revRateRpm: state.bowler.revRateRpm * between([0.95, 0.7], g) }),
  "ball.faded": (state, g, { ball, use }) => ({ ...state, raUm: fadedUm(state, ball, use, use.games ?? between([10, 60], g)) }),
  "ball.oilSoaked": (state, g) => gripping(state, 1 - between(SOAKED_LOSES, g)),
  "ball.dirty": (state, g) => gripping(state, 1 - between(DIRT_LOSES, g)),
  "ball.tooDull": (state, g) => ({ ...state, raUm: state.raUm * between([1.4, 2.4], g) }),
  "ball.tooSmooth": (state, g) => ({ ...state, raUm: state.raUm / between([1.4, 2.4], g) }),
  "ball.tooStrong": (state, g) => gripping({ ...state, raUm: state.raUm * between([1, 1.3], g) }, between([1.08, 1.25], g)),
  "ball.tooWeak": (state, g) => gripping({ ...state, raUm: state.raUm / between([1, 1.3], g) }, between([0.92, 0.75], g)),
  "ball.spareWorn": (state, g) => ({ ...state, raUm: state.raUm * between([1.5, 4], g) }),
};

function fadedUm(state: State, ball: Ball, use: BallUse, games: number): number {
  // Where track and beside it were read, that is how far it has faded.
  if (use.trackMicroinch !== null && use.besideMicroinch !== null) return (state.raUm * use.trackMicroinch) / use.besideMicroinch;
  return raAfter(fadeLaw(ball.cover, state.assumed), state.raUm, games);
}

function played(state: State, shots: number): State {
  const law = wearLaw(state.ball.cover, state.raUm, state.assumed);
  return { ...state, film: filmPlayed(state.film, throwerOf(state), state.line, Math.round(shots), law) };
}

function throwerOf({ bowler, ball, raUm, film, assumed }: State): Thrower {
  return { bowler, ball: averagedBall(ball, assumed["roll.resistance"]), friction: frictionOnLane(film, ball, raUm, assumed) };
}

/** What is done to a ball to see whether it helps, as changes of the same numbers. Chosen; what they do to the ball is computed. */
const TREATMENTS: Readonly<Partial<Record<StepId, (state: State) => State>>> = {
  wipe: (state) => gripping(state, 1.02),
  clean: (state) => gripping(state, 1.06),
  extract: (state) => gripping(state, 1.15),
  handPad: (state) => ({ ...state, raUm: state.raUm * 1.6 }),
  // On polish even a fine pad leaves scratches.
  finePad: (state) => ({ ...state, raUm: state.ball.finish.polished ? state.raUm * 1.3 : state.raUm / 1.6 }),
};

/** What causes and treatments do to the mean shot on the line that was played, in the worlds. */
export interface Shifts {
  /** Each cause that shows in the motion, over how grave it may be. */
  readonly causes: ReadonlyMap<CauseId, readonly Shift[]>;
  readonly treatments: ReadonlyMap<StepId, readonly Shift[]>;
}

/** @param suited a finish that would do better here; null where none is known */
export function shiftsOf(complaint: Complaint, suited: Finish | null = null): Shifts {
  const gravities = evenPoints(DRAWS, 1, 7);
  const worlds = ensemble().worlds.slice(0, DRAWS);
  const states = worlds.map((world) => {
    const state = nothingWrong(world, complaint);
    return { weight: world.weight, state, right: meanShot(throwerOf(state), state.line) };
  });
  const shotOf = (state: State) => meanShot(throwerOf(state), state.line);
  const causes = new Map(
    (Object.entries(CHANGES) as [CauseId, Change][]).map(([id, change]): [CauseId, readonly Shift[]] => [
      id,
      states.map(({ weight, state, right }, i) => ({ weight, ...shiftTo(right, shotOf(change(state, gravities[i], complaint))) })),
    ]),
  );
  // The ball is as it should be, and should be another: the shift is from that one to this.
  if (suited !== null)
    causes.set(
      "ball.unsuited",
      states.map(({ weight, state, right }) => ({
        weight,
        ...shiftTo(shotOf({ ...state, raUm: effectiveRaUm(suited, state.assumed) }), right),
      })),
    );
  const treatments = new Map(
    (Object.entries(TREATMENTS) as [StepId, (state: State) => State][]).map(([id, treat]): [StepId, readonly Shift[]] => [
      id,
      states.map(({ weight, state, right }) => ({ weight, ...shiftTo(right, shotOf(treat(state))) })),
    ]),
  );
  return { causes, treatments };
}

/** The bowler on the best line of the ball as it should be, in one world; a spare ball is sent straight. */
function nothingWrong(world: World, complaint: Complaint): State {
  const { ball } = complaint;
  const ground = groundIn(world, freshQuestion(complaint, complaint.lane.pattern ?? anyPattern(world.id)));
  const film = filmFound(ground);
  const isStraight = ball.job === "spare" || ball.job === "house";
  const line = (isStraight ? null : lineNow(ground, film)) ?? STRAIGHT;
  const { question, assumed } = ground;
  return { bowler: question.bowler, ball, raUm: effectiveRaUm(ball.finish, assumed), film, assumed, line };
}

/** Where nobody knows the pattern the worlds part the named ones among themselves. */
function anyPattern(world: number): PatternSource {
  return { kind: "named", id: PATTERN_IDS[world % PATTERN_IDS.length] };
}

/** The ball of a complaint as it should be, on fresh oil. */
export function freshQuestion({ ball, bowler }: Pick<Complaint, "ball" | "bowler">, pattern: PatternSource): PlanQuestion {
  return {
    seed: 1,
    bowler,
    ball,
    lane: { pattern, playedShots: 0 },
    line: null,
    limits: USUAL_LIMITS,
    candidates: null,
    outsideRangeReason: null,
    trial: [],
    readings: [],
    assumptions: {},
    house: null,
  };
}

/** A ball that never hooks is taken to hook at the pins. */
const PINS_FT = 60;
const CORNER = leaveOf([10]);

function shiftTo(right: MeanShot, wrong: MeanShot): Omit<Shift, "weight"> {
  const corner = ({ boardAtPins, entryAngleDeg }: MeanShot) => leaveChanceAt(CORNER, boardAtPins, entryAngleDeg) + 0.02;
  return {
    hookFt: (wrong.hookStartFt ?? PINS_FT) - (right.hookStartFt ?? PINS_FT),
    boards: wrong.boardAtPins - right.boardAtPins,
    entryDeg: wrong.entryAngleDeg - right.entryAngleDeg,
    cornerRatio: corner(wrong) / corner(right),
  };
}
