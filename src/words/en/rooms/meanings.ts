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
    what: "How often a first ball strikes, with this bowler's spread, on the near-best lines of this finish, over a session in which the lane wears: the mean over complete worlds, each one value for everything nobody has measured, weighed by what is published and by what the trade does. The range holds nine worlds of ten; what is left out of the model is not in it.",
    equation:
      "chance = Σ w S over the worlds; S = mean over the session of Σ v P over the lines, v ∝ e^((P − max P)/0.01); P = mean of P(strike | board, entry, speed, slip) over the spread of deliveries",
  },
  line: {
    what: "Where the ball is laid down and at which angle, for this finish alone: of the lines as good as the best the one that asks for the least move. Finishes are compared each on its own best line: on an unchanged line a duller surface only moves the hit.",
    equation: "line = least move from today's among { P ≥ max P − 0.005 }, within the limits that were put in",
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
    what: "What it costs, in strikes in a hundred, when the middle of the bowler's shots is off by one board of laydown, half a degree of launch, or one mile an hour.",
    equation: "P(line) − ½ (P(line + δ) + P(line − δ)), one thing at a time, P over the bowler's spread on the lane as found",
  },
  keeps: {
    what: "Games until the track is half a step of the ladder away from what was put on.",
    equation: "Ra(g) = L + (Ra₀ − L) e^(−g/τ); until Ra is 1.25 times Ra₀, or Ra₀/1.25",
  },
  todaysLine: {
    what: "Where this finish would hit if the bowler changed nothing, and how often it would strike with that line held through the session.",
    equation: "board at the pins on today's line, this finish against today's",
  },
} as const satisfies Record<string, Meaning>;

export type MeaningId = keyof typeof MEANINGS;
