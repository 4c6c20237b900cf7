import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { PlacesOnBall } from "#drawing/turnedGlobe";
import { HOOK_WORDS } from "#engine/delivery/words";
import { placeOnBall } from "#engine/learning/delivery/pap";
import { DEGREE } from "#engine/units";
import { cross, dot, unit, type Vector } from "#engine/vector";

const USUAL_RADIUS_IN = 8.55 / 2;
const UP: Vector = [0, 1, 0];
const GRIP: Vector = [0, 0, 1];

export function placesOnBall(ball: Pick<Ball, "core" | "layout">, bowler: Pick<Bowler, "pap" | "deliveries"> | null): PlacesOnBall {
  const radiusIn = (ball.core?.diameterIn ?? 2 * USUAL_RADIUS_IN) / 2;
  if (bowler === null || bowler.pap === null) return { pap: null, pin: null, massBias: null, lines: [], track: [] };
  const pap = placeOnBall(bowler.pap, radiusIn);
  const pin = pinOf(pap, ball.layout, radiusIn);
  const massBias = pin === null ? null : massBiasOf(pin, pap, ball.layout?.drillingAngleDeg ?? null);
  const lines =
    pin === null || dot(pap, pin) > 1 - SAME_PLACE ? [] : [pap, massBias].flatMap((end) => (end === null ? [] : [arc(pin, end)]));
  return { pap, pin, massBias, lines, track: trackCircle(pap, tiltDegOf(bowler)) };
}

/**
 * The pin, by its distance from the PAP over the surface and the angle of that line to the vertical axis line, towards the grip (common practice: the VAL runs
 * through the PAP, upright to the middle line of the grip).
 */
function pinOf(pap: Vector, layout: Ball["layout"], radiusIn: number): Vector | null {
  const [pinToPapIn, valAngleDeg] = [layout?.pinToPapIn ?? null, layout?.valAngleDeg ?? null];
  if (pinToPapIn === null || valAngleDeg === null) return null;
  const up = unit(minus(UP, times(pap, dot(UP, pap))));
  const toGrip = minus(GRIP, times(pap, dot(GRIP, pap)));
  const beside = unit(minus(toGrip, times(up, dot(toGrip, up))));
  const val = valAngleDeg * DEGREE;
  const along = plus(times(up, Math.cos(val)), times(beside, Math.sin(val)));
  const angle = pinToPapIn / radiusIn;
  return plus(times(pap, Math.cos(angle)), times(along, Math.sin(angle)));
}

/**
 * The mass bias, by the drilling angle: at the pin, between the line to the PAP and the line to the mass bias, opening downwards and back under the grip
 * (common practice: a small angle puts the mass bias close to the VAL, a large one towards the thumb). Left-handers have it the other way round.
 */
function massBiasOf(pin: Vector, pap: Vector, drillingAngleDeg: number | null): Vector | null {
  // A pin on the axis has no line to it, and so no angle.
  if (drillingAngleDeg === null || dot(pap, pin) > 1 - SAME_PLACE) return null;
  const toPap = unit(minus(pap, times(pin, dot(pap, pin))));
  const turned = (pap[0] >= 0 ? -1 : 1) * drillingAngleDeg * DEGREE;
  return plus(times(toPap, Math.cos(turned)), times(cross(pin, toPap), Math.sin(turned)));
}

const SAME_PLACE = 1e-9;
const ARC_POINTS = 24;

/** The shortest way over the surface. */
function arc(from: Vector, to: Vector): readonly Vector[] {
  const whole = Math.acos(Math.min(1, Math.max(-1, dot(from, to))));
  const aside = unit(minus(to, times(from, dot(to, from))));
  return Array.from({ length: ARC_POINTS + 1 }, (_, i) => {
    const turn = (whole * i) / ARC_POINTS;
    return plus(times(from, Math.cos(turn)), times(aside, Math.sin(turn)));
  });
}

const POINTS = 120;

/** The ball touches the lane straight below; the axis stands above the floor by its tilt, so that the track lies a quarter turn and the tilt away from the PAP (docs/units-and-axes.md). */
function trackCircle(pap: Vector, tiltDeg: number): readonly Vector[] {
  const away = (90 + tiltDeg) * DEGREE;
  const one = unit(cross(pap, Math.abs(pap[1]) < 0.9 ? UP : GRIP));
  const two = cross(pap, one);
  return Array.from({ length: POINTS }, (_, i) => {
    const turn = (2 * Math.PI * i) / POINTS;
    const ring = plus(times(one, Math.cos(turn)), times(two, Math.sin(turn)));
    return plus(times(pap, Math.cos(away)), times(ring, Math.sin(away)));
  });
}

/** Tilt of the newest delivery that knows it, else of the usual one. */
function tiltDegOf({ deliveries }: Pick<Bowler, "deliveries">): number {
  const newestFirst = deliveries.toSorted((a, b) => b.at.localeCompare(a.at));
  return newestFirst.find(({ axisTiltDeg }) => axisTiltDeg !== null)?.axisTiltDeg ?? HOOK_WORDS.medium.axisTiltDeg;
}

function times([x, y, z]: Vector, factor: number): Vector {
  return [x * factor, y * factor, z * factor];
}

function plus([a, b, c]: Vector, [x, y, z]: Vector): Vector {
  return [a + x, b + y, c + z];
}

function minus(a: Vector, b: Vector): Vector {
  return plus(a, times(b, -1));
}
