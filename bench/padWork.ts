import { assume } from "#engine/assumptions";
import { cutConstant, FORCES } from "#engine/surface/cut";
import { ballCells, type Cells } from "#engine/surface/padWork/cells";
import type { SpinnerStage } from "#engine/surface/padWork/padStage";
import { PLAIN_QUESTION, workBySide } from "#engine/surface/padWork/padWork";
import { sumReceived } from "#engine/surface/padWork/received";
import { SIDE_AXES, SIDE_IDS } from "#engine/surface/padWork/sides";
import { DEGREE, INCH, MICROMETRE, RPM } from "#engine/units";
import { median, type Row } from "./rows.ts";

const CELLS = 6000;
const ROUNDS = 5;
const SWEEP_PLACES = 120;

const STAGE: SpinnerStage = {
  by: "spinner",
  grainUm: 18.3,
  padDiameterIn: 4,
  spinnerRpm: 400,
  sweepDeg: [5, 80],
  sides: SIDE_IDS.map((side) => ({ side, seconds: 30, force: "medium", held: null })),
};
const QUESTION = { ...PLAIN_QUESTION, cells: CELLS, stages: [STAGE] };

/** Cells a second for six sides, against the plain double loop: every cell against every place of the sweep. */
export function padWorkRows(): readonly Row[] {
  const cells = ballCells(CELLS);
  const ours = () => sumReceived([...workBySide(QUESTION, cells).values()], CELLS).depthUm;
  const [first, plain] = [ours(), plainDepths(cells)];
  const worst = first.reduce((most, depth, i) => Math.max(most, Math.abs(depth - plain[i])), 0);
  if (worst > 0.02 * Math.max(...plain)) throw new Error(`pad work differs from the plain loop by ${worst} µm`);
  const rounds = Array.from({ length: ROUNDS }, () => ({ ours: seconds(ours), plain: seconds(() => plainDepths(cells)) }));
  const time = median(rounds.map((round) => round.ours));
  return [
    {
      what: "pad work, six sides",
      value: `${Math.round((CELLS * SIDE_IDS.length) / time).toLocaleString("en")} cells/s`,
      ratio: { rounds: rounds.map((round) => round.plain / round.ours), of: "the speed of a plain double loop", better: "higher" },
    },
  ];
}

function seconds(work: () => unknown): number {
  const start = performance.now();
  work();
  return (performance.now() - start) / 1000;
}

/** Depth of each cell, µm, by the definition: pressure times surface speed times the share of a turn under the pad, place by place. */
function plainDepths({ at }: Cells): number[] {
  const radius = (QUESTION.diameterIn / 2) * INCH;
  const pad = STAGE.padDiameterIn / QUESTION.diameterIn;
  const pressure = FORCES.medium / (2 * Math.PI * radius * radius * (1 - Math.cos(pad)));
  const k = cutConstant({ grainUm: STAGE.grainUm, hardnessD: QUESTION.hardnessD, ownCut: 1 }, assume()) / MICROMETRE;
  return at.map(([x, y, z]) => {
    let depth = 0;
    for (const { side, seconds: time } of STAGE.sides) {
      const [ax, ay, az] = SIDE_AXES[side];
      const ring = Math.acos(Math.max(-1, Math.min(1, ax * x + ay * y + az * z)));
      for (let place = 0; place < SWEEP_PLACES; place++) {
        const angle = (STAGE.sweepDeg[0] + ((STAGE.sweepDeg[1] - STAGE.sweepDeg[0]) * (place + 0.5)) / SWEEP_PLACES) * DEGREE;
        const cosine = (Math.cos(pad) - Math.cos(ring) * Math.cos(angle)) / (Math.sin(ring) * Math.sin(angle));
        const share = cosine >= 1 ? 0 : cosine <= -1 ? 1 : Math.acos(cosine) / Math.PI;
        depth += (k * pressure * STAGE.spinnerRpm * RPM * radius * Math.sin(ring) * share * time) / SWEEP_PLACES;
      }
    }
    return depth;
  });
}
