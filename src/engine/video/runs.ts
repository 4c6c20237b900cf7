import { FOOT } from "../units.ts";
import { type Place, USUAL_RADIUS } from "./freeFriction.ts";
import { ballPlace, type Camera, outlineOf } from "./pinhole.ts";
import { median } from "./robust.ts";
import type { BallSeen } from "./sightings.ts";

export interface PlacedBall {
  readonly seen: BallSeen;
  readonly place: Place;
}

/** Sightings of one shot, by time. */
export interface Run {
  readonly balls: readonly PlacedBall[];
}

/** Of the lane; before the foul line the ball is in a hand, and past the head pin it has met it. */
const [FROM, UNTIL] = [0.5 * FOOT, 59.6 * FOOT];
/** A gap as long as this, s, or a ball as far back as this, m, is another shot's. */
const GAP_S = 1;
const BACK = 6 * FOOT;
/** A sighting whose radius is out by more than this, px and share, is of something else or half hidden. */
const RADIUS_OFF_PX = 1;
const RADIUS_OFF_SHARE = 0.08;
/** Further than this from where the others say the ball is: something else, m. */
const BESIDE = { along: 2.5 * FOOT, across: 0.9 * FOOT };
/** A shot's course bends: a neighbourhood of so many sightings either way says where the ball is. */
const NEIGHBOURS = 4;

/** The shots in a run of pictures. @param size radius seen over radius to be expected, of all sightings */
export function runsOf(seen: readonly BallSeen[], camera: Camera, size: number): Run[] {
  const placed = seen.flatMap((ball): PlacedBall[] => {
    const place = ballPlace(camera, ball, USUAL_RADIUS);
    if (place === null || place.y < FROM || place.y > UNTIL) return [];
    const expected = size * outlineOf(camera, [place.x, place.y, USUAL_RADIUS], USUAL_RADIUS).radius;
    const off = Math.abs(ball.radius - expected);
    return off > Math.max(RADIUS_OFF_PX, RADIUS_OFF_SHARE * expected) ? [] : [{ seen: ball, place }];
  });
  const runs: PlacedBall[][] = [];
  for (const ball of placed) {
    const run = runs[runs.length - 1];
    const before = run?.[run.length - 1];
    if (before === undefined || ball.seen.t - before.seen.t > GAP_S || isNewStart(run, ball)) runs.push([ball]);
    else run.push(ball);
  }
  return runs.map((balls) => ({ balls: withoutStrays(balls) })).filter(({ balls }) => balls.length >= 2);
}

/** A single sighting far ahead must not end a run: the middle one of the last few counts. */
function isNewStart(run: readonly PlacedBall[], { place }: PlacedBall): boolean {
  const lately = median(run.slice(-5).map((ball) => ball.place.y));
  return lately - place.y > BACK;
}

/** Without sightings that lie beside what the straight line through their neighbours says. */
function withoutStrays(balls: readonly PlacedBall[]): PlacedBall[] {
  return balls.filter((ball, i) => {
    const around = balls.slice(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1);
    const speed = median(
      around.slice(1).map((one, k) => (one.place.y - around[k].place.y) / Math.max(1e-6, one.seen.t - around[k].seen.t)),
    );
    const along = median(around.map((one) => one.place.y - speed * (one.seen.t - ball.seen.t)));
    const across = median(around.map((one) => one.place.x));
    return Math.abs(ball.place.y - along) < BESIDE.along && Math.abs(ball.place.x - across) < BESIDE.across;
  });
}

/** Where a fit begins: mean speed of the run, its first place and its first third's direction, in a right-hander's lane. */
export function startOfRun({ balls }: Run, side: 1 | -1): { foulLineTime: number; x: number; angle: number; speed: number } {
  const first = balls[0];
  const later = balls[Math.floor(balls.length / 3)];
  const last = balls[balls.length - 1];
  const speed = (1.03 * (last.place.y - first.place.y)) / (last.seen.t - first.seen.t);
  const slope = (side * (later.place.x - first.place.x)) / Math.max(FOOT, later.place.y - first.place.y);
  return {
    foulLineTime: first.seen.t - first.place.y / speed,
    x: side * first.place.x - slope * first.place.y,
    angle: Math.atan(slope),
    speed: Math.min(14, Math.max(4, speed)),
  };
}
