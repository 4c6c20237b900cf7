import { type Assumed, assume } from "../assumptions.ts";
import { type Body, bodyOf } from "../ball/body.ts";
import type { FrictionField } from "../contact/friction.ts";
import { release } from "../delivery/release.ts";
import { filmOfPattern, handed } from "../lane/film.ts";
import type { FilmMap } from "../lane/filmMap.ts";
import { HEAD_PIN, LANE_EDGE, PINS_PLANE, xToBoard } from "../lane/geometry.ts";
import { wearLaw } from "../lane/wear.ts";
import { deriveSeed, uniformSource } from "../random.ts";
import { effectiveRaOfReadingUm, effectiveRaUm } from "../surface/finish.ts";
import { DEGREE, FOOT, INCH, MPH } from "../units.ts";
import { aboutAxis, multiply, type Quaternion, turnBetween, unit, type Vector } from "../vector.ts";
import { runAveragedShot } from "./averagedShot.ts";
import { checkShot } from "./checkShot.ts";
import { courseOfMoments } from "./courseOfMoments.ts";
import { flare, type MomentumHistory } from "./flare.ts";
import { runFullShot } from "./fullShot.ts";
import { averagedBall, frictionOnLane, givenFriction } from "./ground.ts";
import { phasesOf } from "./phases.ts";
import type { RawRun } from "./rawRun.ts";
import type { Shot, ShotSample, ShotSetup } from "./shot.ts";
import { filmPlayed } from "./track.ts";

/**
 * One shot, from the bowler's hand to the pins.
 *
 * Friction goes on past the lane's edge as it was there; such samples are marked `offLane` and the gutter's place is reported.
 * @param found the film as the bowler finds it, right-hander's frame, where somebody worked it out (planning does); else shots already played wore the pattern along this shot's own line.
 * @throws EngineFault for a setup that is not physical, naming every field that is wrong.
 */
export function simulateShot(setup: ShotSetup, assumed: Assumed = assume(), found: FilmMap | null = null): Shot {
  checkShot(setup);
  const { bowler, ball, line, model } = setup;
  const body = bodyOf(ball);
  const friction = groundOf(setup, assumed, found);
  const start = release(bowler, line);
  const startY = model.startFt * FOOT;
  const wanted = [...new Set([...setup.atFt.map((ft) => ft * FOOT), PINS_PLANE, HEAD_PIN])]
    .filter((y) => y >= startY)
    .sort((a, b) => a - b);

  const { rollingResistance, slipRegularisationMps: slipRegularisation, gravity } = model;
  const run =
    model.motion === "full"
      ? runFullShot(
          { body, rollingResistance, slipRegularisation, gravity },
          friction,
          start,
          startY,
          orientationOf(setup, body, start),
          wanted,
        )
      : runAveragedShot(averagedBall(ball, rollingResistance, slipRegularisation, gravity), body, friction, start, startY, wanted);

  return told(setup, body, run);
}

function groundOf({ surface, ball, bowler, line }: ShotSetup, assumed: Assumed, found: FilmMap | null): FrictionField {
  if (surface.kind === "given") return givenFriction(surface.friction);
  const ra = ball.raMicroinch === null ? effectiveRaUm(ball.finish, assumed) : effectiveRaOfReadingUm(ball.raMicroinch, assumed);
  const film = found ?? handed(filmOfPattern(surface.lane.pattern), bowler.hand);
  const friction = frictionOnLane(film, ball, ra, assumed);
  const { playedShots } = surface.lane;
  if (found !== null || playedShots === 0) return friction;
  const thrower = { bowler, ball: averagedBall(ball, assumed["roll.resistance"]), friction };
  return frictionOnLane(filmPlayed(film, thrower, line, playedShots, wearLaw(ball.cover, ra, assumed)), ball, ra, assumed);
}

/** The core stands with the bowler's axis along the spin; how far it is turned about it nobody controls, so the seed says. */
function orientationOf(setup: ShotSetup, body: Body, start: { wx: number; wy: number; wz: number }): Quaternion {
  if (setup.model.coreOrientation) return setup.model.coreOrientation;
  const spin: Vector = [start.wx, start.wy, start.wz];
  const axis: Vector = Math.hypot(...spin) > 0 ? unit(spin) : [-1, 0, 0];
  const phase = 2 * Math.PI * uniformSource(deriveSeed(setup.seed, 1))();
  return multiply(aboutAxis(axis, phase), turnBetween(body.axisInBody, axis));
}

/** Tells a run in the trade's units and in true lane axes: a left-hander's is mirrored back here. */
function told(setup: ShotSetup, body: Body, run: RawRun): Shot {
  const left = setup.bowler.hand === "left";
  const side = left ? -1 : 1;
  const phases = phasesOf(run.moments);
  const atPins = run.states.find((state) => state.y === PINS_PLANE);
  const momentAtPins = run.moments.find((moment) => Math.abs(moment.y - PINS_PLANE) < 1e-9);
  const gutter = run.moments.find((moment) => Math.abs(moment.x) > LANE_EDGE);
  const samples: ShotSample[] = run.states
    .filter((state) => setup.atFt.some((ft) => ft * FOOT === state.y))
    .map((state) => ({
      yFt: state.y / FOOT,
      tS: state.t,
      xM: side * state.x,
      board: xToBoard(state.x),
      velocityMps: [side * state.v[0], state.v[1]],
      omegaRadps: [state.w[0], side * state.w[1], side * state.w[2]],
      entryAngleDeg: Math.atan2(-state.v[0], state.v[1]) / DEGREE,
      offLane: Math.abs(state.x) > LANE_EDGE,
    }));
  return {
    samples,
    gutter: gutter ? { yFt: gutter.y / FOOT, side: gutter.x * side > 0 ? "right" : "left" } : null,
    phases: {
      hookStartFt: phases.hookStart === null ? null : phases.hookStart / FOOT,
      rollStartFt: phases.rollStart === null ? null : phases.rollStart / FOOT,
      breakpoint: { board: xToBoard(phases.breakpoint.x), yFt: phases.breakpoint.y / FOOT },
      slipAtPinsMps: momentAtPins?.slip ?? null,
      timeToPinsS: atPins?.t ?? null,
      speedAtPinsMph: atPins ? Math.hypot(...atPins.v) / MPH : null,
    },
    flare: { toPinsIn: flare(body, until(run, PINS_PLANE)) / INCH, to45FtIn: flare(body, until(run, 45 * FOOT)) / INCH },
    energy: run.energy,
    reachedPins: atPins !== undefined && gutter === undefined,
    course: courseOfMoments(run.moments, setup.bowler.hand, gutter ? null : (atPins ?? null)),
  };
}

function until(run: RawRun, y: number): MomentumHistory {
  const count = run.moments.filter((moment) => moment.y <= y + 1e-9).length;
  return { t: run.history.t.slice(0, count), momentum: run.history.momentum.slice(0, count) };
}
