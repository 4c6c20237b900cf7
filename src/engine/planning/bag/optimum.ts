/**
 * Which ball, in which state, at each stage. Every ball has options (how it is worked, and what it is then worth at each stage); at most one option of a ball
 * is taken, and every change of ball costs something. Exact, by branch and bound: see docs/model/bag-plan.md for the formulation and the bound.
 */

/** One way of working a ball. */
export interface BagOption {
  /** Expected strikes at each stage. */
  readonly worth: ArrayLike<number>;
  /** What the option uses up of each budget, in the budgets' order; ≥ 0. */
  readonly uses: readonly number[];
}

export interface BagProblem {
  /** Options by ball; a ball may have none. */
  readonly balls: readonly (readonly BagOption[])[];
  readonly stages: number;
  /** Strikes that a change of ball costs, ≥ 0. */
  readonly changeCost: number;
  /** How much there is of each budget. */
  readonly budgets: readonly number[];
}

export interface BagChoice {
  /** Index of the option taken by each ball; null for a ball that is never thrown. */
  readonly options: readonly (number | null)[];
  /** Which ball is thrown at each stage. */
  readonly sequence: readonly number[];
  /** Expected strikes less what the changes cost. */
  readonly worth: number;
}

/** The best choice; null where no ball has an option that fits the budgets. */
export function bestChoice(problem: BagProblem): BagChoice | null {
  const search = new Search(problem);
  search.descend();
  return search.best;
}

/**
 * Depth-first. The bound lets every ball that is still open take another option at every stage; only a ball that the bound's own route throws is branched on,
 * by its options and by leaving it out. Where the route throws no open ball the bound is a choice, and nothing below it can be better.
 */
class Search {
  best: BagChoice | null = null;
  readonly #problem: BagProblem;
  readonly #taken: (number | "open" | "out")[];
  readonly #left: number[];

  constructor(problem: BagProblem) {
    this.#problem = problem;
    this.#taken = problem.balls.map(() => "open");
    this.#left = [...problem.budgets];
  }

  descend(): void {
    const { balls, stages, changeCost } = this.#problem;
    const route = bestRoute(
      balls.map((_, ball) => this.#mostWorth(ball)),
      stages,
      changeCost,
    );
    if (route === null || (this.best !== null && route.worth <= this.best.worth + 1e-12)) return;
    const ball = this.#openOn(route);
    if (ball === null) {
      const options = this.#taken.map((taken, i) => (typeof taken === "number" && route.sequence.includes(i) ? taken : null));
      this.best = { options, ...route };
      return;
    }
    for (const option of this.#promising(ball, route)) {
      const { uses } = balls[ball][option];
      this.#taken[ball] = option;
      uses.forEach((used, i) => {
        this.#left[i] -= used;
      });
      this.descend();
      uses.forEach((used, i) => {
        this.#left[i] += used;
      });
    }
    this.#taken[ball] = "out";
    this.descend();
    this.#taken[ball] = "open";
  }

  /** By stage, the most that a ball can be worth with what is left of the budgets. */
  #mostWorth(ball: number): ArrayLike<number> {
    const taken = this.#taken[ball];
    if (typeof taken === "number") return this.#problem.balls[ball][taken].worth;
    const options = taken === "out" ? [] : this.#problem.balls[ball].filter((option) => this.#fits(option));
    return Float64Array.from({ length: this.#problem.stages }, (_, stage) =>
      options.reduce((most, { worth }) => Math.max(most, worth[stage]), Number.NEGATIVE_INFINITY),
    );
  }

  #fits({ uses }: BagOption): boolean {
    return uses.every((used, i) => used <= this.#left[i] + 1e-9);
  }

  /** The open ball that the route throws at most stages; null where it throws none. */
  #openOn({ sequence }: Route): number | null {
    let found: number | null = null;
    let most = 0;
    for (const ball of new Set(sequence)) {
      const times = sequence.filter((thrown) => thrown === ball).length;
      if (this.#taken[ball] === "open" && times > most) [found, most] = [ball, times];
    }
    return found;
  }

  /** Options that fit, the best on the route's stages first: a good choice found early cuts the most. */
  #promising(ball: number, { sequence }: Route): readonly number[] {
    const options = this.#problem.balls[ball];
    const onRoute = (option: number) =>
      sequence.reduce((sum, thrown, stage) => (thrown === ball ? sum + options[option].worth[stage] : sum), 0);
    return [...options.keys()].filter((option) => this.#fits(options[option])).sort((a, b) => onRoute(b) - onRoute(a));
  }
}

interface Route {
  readonly sequence: readonly number[];
  readonly worth: number;
}

/**
 * The best sequence of balls through the stages when each ball's worth at each stage is given: dynamic programming, exact.
 *
 * @param worth by ball, then stage; −∞ for a ball that may not be thrown
 * @returns null where no ball may be thrown at some stage
 */
export function bestRoute(worth: readonly ArrayLike<number>[], stages: number, changeCost: number): Route | null {
  const balls = worth.length;
  let best = Array.from({ length: balls }, (_, ball) => worth[ball][0]);
  const from: Int32Array[] = [];
  for (let stage = 1; stage < stages; stage++) {
    const leader = best.indexOf(Math.max(...best));
    const cameFrom = new Int32Array(balls);
    const next = best.map((own, ball) => {
      // Staying, or coming over from the best of all: nothing else can be better.
      const stays = own >= best[leader] - changeCost;
      cameFrom[ball] = stays ? ball : leader;
      return (stays ? own : best[leader] - changeCost) + worth[ball][stage];
    });
    from.push(cameFrom);
    best = next;
  }
  const total = Math.max(...best);
  if (!Number.isFinite(total)) return null;
  const sequence = [best.indexOf(total)];
  for (let stage = stages - 1; stage > 0; stage--) sequence.unshift(from[stage - 1][sequence[0]]);
  return { sequence, worth: total };
}
