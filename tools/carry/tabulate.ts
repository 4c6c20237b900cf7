import { type CarryTable, CELLS, ENTRY_AXIS, OFFSET_AXIS } from "#engine/pins/carryGrid";
import { type Leave, mirrored, pinsDown, STRIKE } from "#engine/pins/leave";
import { type Design, POCKET_SIDE } from "./design.ts";
import type { Network } from "./emulator.ts";
import { type Candidate, chancesUnder } from "./fit.ts";
import type { Outcome } from "./hit.ts";
import { twoMainWays } from "./mainWays.ts";
import { slopesOf } from "./qualities.ts";

/** Standard deviations of the kernel that smooths the counts: nothing below half an inch is to be trusted. */
const KERNEL_IN = 0.2;
const KERNEL_DEG = 0.5;
const REACH = 3;
/** Leaves kept one by one: at most so many, and only those that hits on the bowler's own side make so often, all over those hits. */
const MOST_LEAVES = 60;
const WORTH_KEEPING = 0.0002;
/** From the nose to the lightest hit that still meets the head pin. */
const OWN_SIDE_IN = [-0.5, 6.25] as const;
const OWN_SIDE = Array.from({ length: CELLS }, (_, cell) => cell).filter((cell) => {
  const offset = OFFSET_AXIS.from + OFFSET_AXIS.step * Math.floor(cell / ENTRY_AXIS.count);
  return offset >= OWN_SIDE_IN[0] && offset <= OWN_SIDE_IN[1];
});
const LEAST_P = 1e-4;
/** A cell that no run came near counts as nothing at all rather than as no number. */
const LEAST_WEIGHT = 1e-9;

interface Counted {
  readonly offsetIn: number;
  readonly entryDeg: number;
  readonly leave: Leave;
}

/** The table from its runs, and from the fitted candidates how its strike chance may lie elsewhere. */
export function tabulate(
  design: Design,
  outcomes: readonly Outcome[],
  networks: readonly Network[],
  candidates: readonly Candidate[],
): CarryTable {
  const sums = weighted(bothSides(design, outcomes));
  const chance = (leave: Leave, cell: number): number => (sums.byLeave.get(leave)?.[cell] ?? 0) / Math.max(LEAST_WEIGHT, sums.weight[cell]);
  const strike = Float64Array.from({ length: CELLS }, (_, cell) => chance(STRIKE, cell));
  const leaves = [...sums.byLeave.keys()]
    .filter((leave) => leave !== STRIKE)
    .map((leave) => ({ leave, mean: OWN_SIDE.reduce((sum, cell) => sum + chance(leave, cell), 0) / OWN_SIDE.length }))
    .filter(({ mean }) => mean >= WORTH_KEEPING)
    .sort((a, b) => b.mean - a.mean || a.leave - b.leave)
    .slice(0, MOST_LEAVES)
    .map(({ leave }) => leave);
  const leaveChance = Float64Array.from({ length: CELLS * leaves.length }, (_, i) =>
    chance(leaves[i % leaves.length], Math.floor(i / leaves.length)),
  );
  return {
    strike,
    ...uncertainty(networks, candidates),
    sampling: strike.map((p, cell) => {
      const inside = Math.min(1 - 0.01, Math.max(0.01, p));
      return Math.min(2, 1 / Math.sqrt(Math.max(LEAST_WEIGHT, sums.effective[cell]) * inside * (1 - inside)));
    }),
    leaves,
    leaveChance,
    qualities: slopesOf(networks, candidates),
    pinsDown: Float64Array.from({ length: CELLS }, (_, cell) => sums.down[cell] / Math.max(LEAST_WEIGHT, sums.weight[cell])),
  };
}

/** Every run, and the same run in a mirror: so the table goes on smoothly across 0°. */
function bothSides(design: Design, outcomes: readonly Outcome[]): readonly Counted[] {
  return outcomes.flatMap(({ leave }, index) => {
    const { offsetIn, entryDeg } = design.run(index).hit;
    return [
      { offsetIn, entryDeg, leave },
      { offsetIn: -offsetIn, entryDeg: -entryDeg, leave: mirrored(leave) },
    ];
  });
}

interface Sums {
  readonly weight: Float64Array;
  /** How many runs the weights of a cell are worth. */
  readonly effective: Float64Array;
  readonly down: Float64Array;
  readonly byLeave: ReadonlyMap<Leave, Float64Array>;
}

function weighted(counted: readonly Counted[]): Sums {
  const [weight, squares, down] = [new Float64Array(CELLS), new Float64Array(CELLS), new Float64Array(CELLS)];
  const byLeave = new Map<Leave, Float64Array>();
  for (const { offsetIn, entryDeg, leave } of counted) {
    const plane = byLeave.get(leave) ?? new Float64Array(CELLS);
    byLeave.set(leave, plane);
    for (const [row, alongOffset] of nearby(OFFSET_AXIS, offsetIn, KERNEL_IN)) {
      for (const [column, alongEntry] of nearby(ENTRY_AXIS, entryDeg, KERNEL_DEG)) {
        const cell = row * ENTRY_AXIS.count + column;
        const w = alongOffset * alongEntry;
        weight[cell] += w;
        squares[cell] += w * w;
        down[cell] += w * pinsDown(leave);
        plane[cell] += w;
      }
    }
  }
  return { weight, effective: weight.map((w, cell) => (w * w) / Math.max(LEAST_WEIGHT, squares[cell])), down, byLeave };
}

/** Nodes of an axis within the kernel's reach of a value, each with its weight. */
function nearby(axis: { from: number; step: number; count: number }, value: number, sd: number): readonly (readonly [number, number])[] {
  const first = Math.max(0, Math.ceil((value - REACH * sd - axis.from) / axis.step));
  const last = Math.min(axis.count - 1, Math.floor((value + REACH * sd - axis.from) / axis.step));
  const nodes: (readonly [number, number])[] = [];
  for (let node = first; node <= last; node++) nodes.push([node, Math.exp(-0.5 * ((axis.from + node * axis.step - value) / sd) ** 2)]);
  return nodes;
}

/** The two main ways in which the log odds of the fitted candidates differ; outside the fitted hits the nearest of them holds. */
function uncertainty(networks: readonly Network[], candidates: readonly Candidate[]): Pick<CarryTable, "level" | "shape"> {
  const { offsetIn, entryDeg } = POCKET_SIDE;
  const within = (value: number, [low, high]: readonly [number, number]) => Math.min(high, Math.max(low, value));
  const places = Array.from({ length: CELLS }, (_, cell) => ({
    offset: within(Math.abs(OFFSET_AXIS.from + OFFSET_AXIS.step * Math.floor(cell / ENTRY_AXIS.count)), offsetIn),
    entry: within(ENTRY_AXIS.from + ENTRY_AXIS.step * (cell % ENTRY_AXIS.count), entryDeg),
  }));
  const chances = candidates.map(({ coefficients }) => {
    const under = chancesUnder(networks, coefficients);
    return places.map(({ offset, entry }) => Math.min(1 - LEAST_P, Math.max(LEAST_P, under.kind("strike", offset, entry))));
  });
  return twoMainWays(chances);
}
