import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { Point } from "#drawing/svg";
import { OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import type { Vector } from "#engine/vector";
import { placesOnBall } from "../../measured/placesOnBall.ts";

export interface TrackOnBall {
  readonly front: readonly Point[];
  readonly back: readonly Point[];
  /** Whether it is drawn from this bowler's own PAP. */
  readonly isKnown: boolean;
  /** On which side of the grip it lies: −1 left, 1 right. */
  readonly side: -1 | 1;
}

/** Where the PAP of most lies, in: far to the side of the bowling hand and a little up (common practice). */
const USUAL_OVER_IN = 5;
const USUAL_UP_IN = 0.5;

/** The track on both halves, by the bowler's PAP, else where it usually is. */
export function trackOn(ball: Pick<Ball, "core" | "layout">, bowler: Pick<Bowler, "pap" | "deliveries" | "hand"> | null): TrackOnBall {
  const isKnown = (bowler?.pap ?? null) !== null;
  const overIn = bowler?.hand === "left" ? -USUAL_OVER_IN : USUAL_OVER_IN;
  const pap = bowler?.pap ?? { overIn, upIn: USUAL_UP_IN };
  const { track } = placesOnBall(ball, { pap, deliveries: bowler?.deliveries ?? [] });
  return {
    front: longest(
      track,
      ([, , z]) => z >= 0,
      ([x, y]) => [x, y],
    ),
    back: longest(
      track,
      ([, , z]) => z <= 0,
      ([x, y]) => [-x, y],
    ),
    isKnown,
    side: pap.overIn < 0 ? 1 : -1,
  };
}

/** The part of the circle that lies on one half, begun where it comes into view. */
function longest(track: readonly Vector[], isHere: (at: Vector) => boolean, onDisc: (at: Vector) => Point): Point[] {
  const begin = track.findIndex((at, i) => isHere(at) && !isHere(track[(i + track.length - 1) % track.length]));
  const turned = begin === -1 ? track : [...track.slice(begin), ...track.slice(0, begin)];
  return turned.filter(isHere).map(onDisc);
}

interface SpotPlace {
  readonly half: "front" | "back";
  /** Right and up, in radii. */
  readonly at: Point;
}

/** Where the spots lie over the picture. That of the grip stands beside the holes, away from the track; the one off the track where no ball touches the lane. */
export function spotsOf({ front, side }: TrackOnBall): Readonly<Record<Place, SpotPlace>> {
  return {
    grip: { half: "front", at: [-0.46 * side, -0.06] },
    left: { half: "front", at: [-1, 0] },
    right: { half: "front", at: [1, 0] },
    fingers: { half: "front", at: [0, 1] },
    thumb: { half: "front", at: [0, -1] },
    opposite: { half: "back", at: [0, 0] },
    [TRACK]: { half: "front", at: nearest(front, [0.6 * side, -0.5]) },
    [OFF_TRACK]: { half: "front", at: [-0.56 * side, 0.6] },
  };
}

function nearest(track: readonly Point[], [x, y]: Point): Point {
  const away = ([px, py]: Point) => Math.hypot(px - x, py - y);
  return track.reduce((best, point) => (away(point) < away(best) ? point : best), track[0] ?? [x, y]);
}
