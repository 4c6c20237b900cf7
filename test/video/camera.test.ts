import { describe, expect, it } from "vitest";
import { INCH } from "#engine/units";
import type { Vector } from "#engine/vector";
import { calibrate } from "#engine/video/calibrate";
import { ballPlace, type Camera, outlineOf, project } from "#engine/video/pinhole";
import { chanceOf } from "../../tools/video/shots.ts";
import { inventedCamera, marksOf } from "../../tools/video/sightings.ts";

const SEEDS = Array.from({ length: 20 }, (_, i) => 600 + i);
const FOOT = 0.3048;
const RADIUS = 4.275 * INCH;

/** Middle and mean radius of a sphere's outline, from points all over it: those in a direction of the picture that reach furthest are its rim. */
function outlineByPoints(camera: Camera, centre: Vector) {
  const rim = Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360).map((turn) => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const away = [0, 1, 2].map((k) => camera.at[k] - centre[k]);
    const far = Math.hypot(...away);
    // Tangents touch where the sphere is cut by a plane R²/d before its middle.
    const axis = away.map((one) => one / far);
    const across = [axis[1], -axis[0], 0].map((one) => one / Math.hypot(axis[0], axis[1]));
    const up = [
      axis[1] * across[2] - axis[2] * across[1],
      axis[2] * across[0] - axis[0] * across[2],
      axis[0] * across[1] - axis[1] * across[0],
    ];
    const [before, wide] = [RADIUS ** 2 / far, RADIUS * Math.sqrt(1 - (RADIUS / far) ** 2)];
    return project(camera, [0, 1, 2].map((k) => centre[k] + before * axis[k] + wide * (c * across[k] + s * up[k])) as unknown as Vector);
  });
  const [us, vs] = [rim.map(({ u }) => u), rim.map(({ v }) => v)];
  let area = 0;
  rim.forEach((one, i) => {
    const next = rim[(i + 1) % rim.length];
    area += (one.u * next.v - next.u * one.v) / 2;
  });
  const between = (list: number[]) => (Math.min(...list) + Math.max(...list)) / 2;
  return { u: between(us), v: between(vs), radius: Math.sqrt(Math.abs(area) / Math.PI) };
}

describe("the camera", () => {
  it.each(SEEDS)("sees a ball's outline where the tangents from it touch the ball (%i)", (seed) => {
    const camera = { ...inventedCamera(seed), k1: 0 };
    for (const ft of [4, 12, 30, 58]) {
      const centre: Vector = [0.4, ft * FOOT, RADIUS];
      const [told, found] = [outlineOf(camera, centre, RADIUS), outlineByPoints(camera, centre)];
      expect(Math.hypot(told.u - found.u, told.v - found.v)).toBeLessThan(0.02);
      expect(told.radius / found.radius).toBeCloseTo(1, 3);
    }
  });

  it.each(SEEDS)("finds the ball's place back from the outline's middle (%i)", (seed) => {
    const camera = inventedCamera(seed);
    for (const ft of [6, 12, 30, 58]) {
      const place = ballPlace(camera, outlineOf(camera, [-0.3, ft * FOOT, RADIUS], RADIUS), RADIUS);
      expect(place?.x).toBeCloseTo(-0.3, 3);
      expect((place?.y ?? 0) / FOOT).toBeCloseTo(ft, 2);
    }
  });

  it("says of a picture above the horizon that no ball can be there", () => {
    const camera = inventedCamera(600);
    expect(ballPlace(camera, { u: camera.picture.width / 2, v: -20 * camera.picture.height }, RADIUS)).toBeNull();
  });

  it.each(SEEDS)("is found from exact marks, with nothing known of it before (%i)", (seed) => {
    const camera = inventedCamera(seed);
    const found = calibrate(camera.picture, marksOf(camera, chanceOf(seed), 0));
    expect(found.camera.focal / camera.focal).toBeCloseTo(1, 2);
    for (let k = 0; k < 3; k++) expect(Math.abs(found.camera.at[k] - camera.at[k])).toBeLessThan(0.03);
    for (const ft of [5, 30, 60]) {
      const [there, seen] = [project(camera, [0.2, ft * FOOT, 0.1]), project(found.camera, [0.2, ft * FOOT, 0.1])];
      expect(Math.hypot(there.u - seen.u, there.v - seen.v)).toBeLessThan(ft < 10 ? 0.4 : 0.15);
    }
  });

  it("knows how far it may be wrong: its own covariance holds the truth", () => {
    let within = 0;
    let all = 0;
    for (const seed of SEEDS) {
      const camera = inventedCamera(seed);
      const found = calibrate(camera.picture, marksOf(camera, chanceOf(seed), 0.6));
      const truth = [Math.log(camera.focal), ...camera.at];
      for (let k = 0; k < truth.length; k++) {
        all += 1;
        if (Math.abs(found.numbers[k] - truth[k]) < 1.645 * Math.sqrt(found.covariance[k][k])) within += 1;
      }
    }
    // 80 numbers of 20 cameras: nine tenths, and what chance does to it.
    expect(within / all).toBeGreaterThan(0.8);
  });
});
