/** English text of what the figures of the plan mean, down to the equation. */
export const MEANING = {
  all: "What the figures mean",
  title: (column: string) => `${column}: what it means`,
  equation: "Equation",
  rests: "Rests on",
  taken: (value: string, range: string, mark: string) => `${value} (${range}), ${mark}`,
  from: (source: string) => `source: ${source}`,
  page: (name: string) => `The derivation, its range and its limits stand in docs/model/${name}.`,
  close: "Close",
} as const;

interface Meaning {
  readonly what: string;
  readonly equation: string;
}

export const MEANINGS = {
  chance: {
    what: "How often a first ball strikes, with this bowler's spread, on the best line of this finish, over a session in which the lane wears. The range holds nine in ten draws of the assumptions; what is left out of the model is not in it.",
    equation:
      "chance = mean of P(strike | board, entry angle, speed, slip) over the spread of deliveries; P from the table of simulated racks",
  },
  line: {
    what: "Where the ball is best laid down and at which angle, for this finish alone. Finishes are compared each on its own best line: on an unchanged line a duller surface only moves the hit.",
    equation: "line = argmax over laydown board and launch angle of the chance, within the limits that were put in",
  },
  hookAndRoll: {
    what: "Where the ball begins to turn off its line, and where it stops slipping and only rolls.",
    equation:
      "dv/dt = −µ g u/|u|, du/dt = −(1 + 1/κ) µ g u/|u|, u the slip; µ = s µ_dry + (1 − s) µ_oil, s = 1/(1 + (h/(l₀ c σ))^p), σ = √(Ra_ball² + Ra_lane²)",
  },
  entry: {
    what: "The angle between the ball's way and the lane where it meets the pins.",
    equation: "entry = arctan(v_x/v_y) in the pins' plane; with full roll before it, entry plus launch angle depends on the delivery alone",
  },
  slip: {
    what: "How fast the ball still slips over the lane at the pins: none where it rolls. A ball that slips has not turned all it can.",
    equation: "|u| = |v − ω × R| at the pins",
  },
  room: {
    what: "How far one thing alone may vary on this line and the mean shot still strikes more often than not: the whole width, in boards of laydown, degrees of launch, or speed.",
    equation: "width of { δ : P(strike | line + δ) ≥ ½ } around the line, one thing at a time",
  },
  keeps: {
    what: "Games until the track has faded half a step of the ladder beyond the finishes that are much the same.",
    equation: "Ra(g) = L + (Ra₀ − L) e^(−g/τ); until Ra > 1.25 Ra_dullest or Ra < Ra_smoothest/1.25",
  },
  todaysLine: {
    what: "Where this finish would hit if the bowler changed nothing: the first shot after it comes back from the bench.",
    equation: "board at the pins on today's line, this finish against today's",
  },
} as const satisfies Record<string, Meaning>;

export type MeaningId = keyof typeof MEANINGS;
