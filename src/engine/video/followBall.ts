import { uniformSource } from "../random.ts";
import { FOOT, MPH } from "../units.ts";
import type { Candidate } from "./findBall.ts";

/** A candidate and its picture's time. */
export interface TimedCandidate extends Candidate {
  readonly t: number;
}

/** Balls run so fast down a lane, m/s. */
const SLOWEST = 10 * MPH;
const FASTEST = 24 * MPH;
const TRIES = 1500;
/** So near to a steady run a ball stays: it slows down on its way. */
const NEAR = 2.5 * FOOT;
const LEAST_PICTURES = 12;
const MOST_SHOTS = 12;
const SEED = 7;

/** Runs of candidates that move like a ball, each picture at most once in one: pairs drawn at random make a guess, the most followed is taken (Fischler & Bolles 1981). */
export function followBalls(candidates: readonly TimedCandidate[]): TimedCandidate[][] {
  const runs: TimedCandidate[][] = [];
  let left = [...candidates];
  while (runs.length < MOST_SHOTS) {
    const run = bestRun(left);
    if (run.length < LEAST_PICTURES) break;
    runs.push(run);
    const taken = new Set(run);
    left = left.filter((one) => !taken.has(one));
  }
  return runs.sort((a, b) => a[0].t - b[0].t);
}

function bestRun(candidates: readonly TimedCandidate[]): TimedCandidate[] {
  const uniform = uniformSource(SEED);
  let best: TimedCandidate[] = [];
  if (candidates.length < 2) return best;
  for (let i = 0; i < TRIES; i++) {
    const [a, b] = [0, 1].map(() => candidates[Math.floor(uniform() * candidates.length)]);
    const speed = (b.y - a.y) / (b.t - a.t);
    if (!(speed > SLOWEST && speed < FASTEST) || Math.abs(b.t - a.t) < 0.15) continue;
    const run = along(candidates, (t) => a.y + speed * (t - a.t));
    if (run.length > best.length) best = run;
  }
  return best;
}

/** The nearest candidate of each picture. */
function along(candidates: readonly TimedCandidate[], place: (t: number) => number): TimedCandidate[] {
  const nearest = new Map<number, TimedCandidate>();
  for (const one of candidates) {
    const off = Math.abs(one.y - place(one.t));
    if (off > NEAR) continue;
    const other = nearest.get(one.t);
    if (other === undefined || off < Math.abs(other.y - place(other.t))) nearest.set(one.t, one);
  }
  return [...nearest.values()].sort((a, b) => a.t - b.t);
}
