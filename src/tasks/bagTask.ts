import type { FilmMap } from "#engine/lane/filmMap";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import type { BagDecision } from "#engine/planning/bag/decideBag";
import type { BagOil } from "#engine/planning/bag/films";
import { type RatedState, worthDrawing } from "#engine/planning/bag/options";
import { type BagQuestion, ownWearMatters, ratedStages, stageCount } from "#engine/planning/bag/question";
import { gapPlaces, type ReferenceWorth } from "#engine/planning/bag/references";
import type { BallState } from "#engine/planning/bag/states";
import type { StateDraws } from "#engine/planning/bag/worth";
import type { Executor, StopSignal } from "./executor.ts";
import type { ResultOf, Thrown, Unit } from "./unit.ts";

/** How far a bag plan has got. There is a plan from the end of the worths on. */
export interface BagProgress {
  readonly stage: "oil" | "worth" | "draws";
  readonly done: number;
  readonly of: number;
  readonly plan: BagPlan | null;
}

export interface BagRun {
  readonly executor: Executor;
  readonly onProgress?: (progress: BagProgress) => void;
  readonly signal?: StopSignal;
}

/** Films a unit: short enough to be stopped soon. */
const FILMS_A_DRAW = 4;

/**
 * The bag plan: the oil through the session, then what every ball in every state is worth at every stage, then the draws that say how sure it is.
 * Where the oil is mostly one's own to wear it is played once more with the balls that were chosen. The answer does not depend on how many workers there are.
 *
 * @throws {EngineFault} when the question cannot be answered as put; the signal's reason when it was stopped
 */
export async function runBag(question: BagQuestion, run: BagRun): Promise<BagPlan> {
  const first = await round(question, run, []);
  if (!ownWearMatters(question) || first.thrown.length === 0) return first.plan;
  return (await round(question, run, first.thrown)).plan;
}

/** @param played what the bowler throws at each stage while the oil is worn; empty: the first strike ball as it lies */
async function round(question: BagQuestion, run: BagRun, played: readonly Thrown[]): Promise<BagDecision> {
  const signal = run.signal ?? null;
  const ask = <U extends Unit>(unit: U) => run.executor.run(unit, signal);
  const { states, references } = await ask({ kind: "bagStates", question });
  if (states.length === 0) return ask({ kind: "bagDecide", question, found: { oil: { films: [], oilMl: [] }, rated: [], references: [] } });
  const tell = counter(run, stageCount(question.session) + states.length + references.length);

  const oil = await oilThrough(question, run, played, tell);
  const films = ratedStages(question.session).map((stage) => oil.films[stage]);
  const rate = (state: BallState, on: readonly FilmMap[]) => tell.unit("worth", ask({ kind: "bagWorth", question, state, films: on }));
  const [worths, referenceWorths] = await Promise.all([
    Promise.all(states.map((state) => rate(state, films))),
    Promise.all(
      references.map((state) =>
        rate(
          state,
          gapPlaces(question).map((at) => films[at]),
        ),
      ),
    ),
  ]);
  const rated = states.map((state, i): RatedState => ({ state, worth: worths[i], draws: null }));
  const found = { oil, references: references.map((state, i): ReferenceWorth => ({ state, worth: referenceWorths[i] })) };
  const sketch = await ask({ kind: "bagDecide", question, found: { ...found, rated } });
  tell.plan("worth", sketch.plan);

  const near = worthDrawing(question, rated);
  tell.more(near.length * Math.ceil(films.length / FILMS_A_DRAW));
  const drawn = await Promise.all(
    near.map(async (one): Promise<RatedState> => ({ ...one, draws: await draw(question, one, films, ask, tell) })),
  );
  const decided = await ask({ kind: "bagDecide", question, found: { ...found, rated: drawn } });
  tell.plan("draws", decided.plan);
  return decided;
}

/** A state's draws, a few films at a time. */
async function draw(
  question: BagQuestion,
  { state, worth }: RatedState,
  films: readonly FilmMap[],
  ask: <U extends Unit>(unit: U) => Promise<ResultOf<U>>,
  tell: Counter,
): Promise<StateDraws> {
  const lines = worth.map(({ line }) => line);
  const parts = await Promise.all(
    Array.from({ length: Math.ceil(films.length / FILMS_A_DRAW) }, (_, part) => {
      const [from, to] = [part * FILMS_A_DRAW, (part + 1) * FILMS_A_DRAW];
      return tell.unit("draws", ask({ kind: "bagDraws", question, state, films: films.slice(from, to), lines: lines.slice(from, to) }));
    }),
  );
  return {
    centre: parts.flatMap(({ centre }) => centre),
    drawn: parts[0].drawn.map((_, one) => parts.flatMap(({ drawn }) => drawn[one])),
  };
}

/** The oil at the middle of every stage: one stage after the other, for each begins where the last ended. */
async function oilThrough(question: BagQuestion, run: BagRun, played: readonly Thrown[], tell: Counter): Promise<BagOil> {
  const signal = run.signal ?? null;
  const films: FilmMap[] = [];
  const oilMl: number[] = [];
  let from = await run.executor.run({ kind: "bagStart", question, thrown: played[0] ?? null }, signal);
  for (let stage = 0; stage < stageCount(question.session); stage++) {
    const { middle, end } = await tell.unit(
      "oil",
      run.executor.run({ kind: "bagLane", question, from, thrown: played[stage] ?? null }, signal),
    );
    films.push(middle);
    oilMl.push((from.volumeMl + end.volumeMl) / 2);
    from = end;
  }
  return { films, oilMl };
}

type Counter = ReturnType<typeof counter>;

/** Counts units as they come in, in whatever order, and tells of them. */
function counter(run: BagRun, expected: number) {
  let done = 0;
  let of = expected;
  let latest: BagPlan | null = null;
  const tell = (stage: BagProgress["stage"]): void => {
    if (run.signal?.aborted !== true) run.onProgress?.({ stage, done, of, plan: latest });
  };
  return {
    async unit<T>(stage: BagProgress["stage"], result: Promise<T>): Promise<T> {
      const value = await result;
      done += 1;
      tell(stage);
      return value;
    },
    more(units: number): void {
      of += units;
    },
    plan(stage: BagProgress["stage"], plan: BagPlan): void {
      latest = plan;
      tell(stage);
    },
  };
}
