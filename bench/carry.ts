import { assume } from "#engine/assumptions";
import { strikeAt, strikeMap } from "#engine/pins/carry";
import { evenPoints, uniformSource } from "#engine/random";
import { MIDDLE_COEFFICIENTS } from "../tools/carry/coefficients.ts";
import { arriving, type Hit, hitPins, rack, STEPS } from "../tools/carry/hit.ts";
import { addBall, emptyDeck, loadEngine } from "../tools/carry/scene.ts";
import { median, type Row, secondsOf } from "./rows.ts";

const ROUNDS = 3;
const LOOKUPS = 3_000_000;
const RUNS = 30;

/** Lookups in the carry table, and the builder against the engine's bare stepping through the same hits. */
export async function carryRows(): Promise<readonly Row[]> {
  await loadEngine();
  const rounds = Array.from({ length: ROUNDS }, (_, round) => ({
    lookups: lookupSeconds(),
    addition: additionSeconds(),
    runs: runSeconds(round),
  }));
  return [
    {
      what: "Strike chances looked up",
      value: `${Math.round(LOOKUPS / median(rounds.map(({ lookups }) => lookups))).toLocaleString("en")} a second and core`,
      ratio: {
        rounds: rounds.map(({ lookups, addition }) => lookups / addition),
        of: "the time of reading the hits and adding them up",
        better: "lower",
      },
    },
    {
      what: "Racks simulated by the builder",
      value: `${(RUNS / median(rounds.map(({ runs }) => runs.ours))).toFixed(1)} a second and core`,
      ratio: { rounds: rounds.map(({ runs }) => runs.ours / runs.bare), of: "the time of the engine's bare steps", better: "lower" },
    },
  ];
}

const POINTS = 4096;
const hits = evenPoints(POINTS, 2, 7);

function lookupSeconds(): number {
  const map = strikeMap(assume());
  return secondsOf(() => {
    let sum = 0;
    for (let i = 0; i < LOOKUPS; i++) {
      const at = 2 * (i % POINTS);
      sum += strikeAt(map, 14 + 7 * hits[at], 8 * hits[at + 1]);
    }
    return sum;
  });
}

function additionSeconds(): number {
  return secondsOf(() => {
    let sum = 0;
    for (let i = 0; i < LOOKUPS; i++) {
      const at = 2 * (i % POINTS);
      sum += 14 + 7 * hits[at] + 8 * hits[at + 1];
    }
    return sum;
  });
}

/** The same hits twice: as the builder plays them, and stepped as often without looking. */
function runSeconds(seed: number): { ours: number; bare: number } {
  const hit = (run: number): Hit => ({ offsetIn: 1 + (3 * run) / RUNS, entryDeg: 4, speedMph: 17, slip: 0, verticalSpin: 0, massLb: 15 });
  const steps: number[] = [];
  const ours = secondsOf(() => {
    for (let run = 0; run < RUNS; run++) steps.push(hitPins(hit(run), MIDDLE_COEFFICIENTS, uniformSource(seed * RUNS + run)).steps);
    return steps;
  });
  const bare = secondsOf(() => {
    for (let run = 0; run < RUNS; run++) {
      const scene = emptyDeck(MIDDLE_COEFFICIENTS);
      rack(scene, uniformSource(seed * RUNS + run));
      addBall(scene, arriving(hit(run)));
      stepBarely(scene.world, steps[run]);
      scene.world.free();
    }
    return steps;
  });
  return { ours, bare };
}

function stepBarely(world: { timestep: number; step(): void }, steps: number): void {
  let [done, time] = [0, 0];
  for (const [step, until] of STEPS) {
    world.timestep = step;
    for (; time < until && done < steps; done++) {
      world.step();
      time += step;
    }
  }
}
