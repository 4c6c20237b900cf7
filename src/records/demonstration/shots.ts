import { assume } from "#engine/assumptions";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Line } from "#engine/delivery/bowler";
import { filmOfPattern, handed } from "#engine/lane/film";
import type { FilmMap } from "#engine/lane/filmMap";
import type { Shot, ShotSetup } from "#engine/motion/shot";
import { simulateShot } from "#engine/motion/simulate";
import { carryOf, TYPICAL_QUALITY } from "#engine/pins/carry";
import { type Leave, pinsOf, STRIKE } from "#engine/pins/leave";
import type { Customer, CustomerBall } from "./customers.ts";
import type { Dice } from "./dice.ts";
import type { Furnished } from "./furnish.ts";
import type { Making, Times } from "./making.ts";
import { DAY, MINUTE } from "./shopClock.ts";

/*
 * Shot notes: shots of the engine, with the bowler's own scatter, seen through the eyes of somebody who stands behind the lane.
 */

const ASSUMED = assume();
const SEEN_AT_FT = [15, 40, 60] as const;
const PINS_FT = 60;
/** Board of a pocket hit in the pins' plane, from the hand side; common practice. */
const POCKET_BOARD = 17.5;
const HEAD_PIN_BOARD = 20;
/** Where a bowler stands who hooks much, and who hooks little. */
const LAYDOWN = { from: 14, to: 26 } as const;
const TRIES = 7;
const BETWEEN_SHOTS = 4 * MINUTE;
/** Half a board is what the eye can tell; a display of speed shows tenths. */
const EYE_BOARDS = 0.5;

/** Nearer the edge a ball that turns there is a stronger one than anybody throws on that lane; common practice. */
const LEAST_BREAKPOINT_BOARD = 5;

/** Some shots of a ball that suits the bowler's own house, a few days after it was collected, noted one by one; none where no ball does. */
export async function* noteShots(making: Making, shop: Furnished, customer: Customer, balls: readonly CustomerBall[]): Times {
  const { things, dice, clock, by } = making;
  yield clock.now() + dice.whole(1, 6) * DAY;
  const place = shop.places[customer.home];
  const film = handed(filmOfPattern({ kind: "named", id: place.pattern }), customer.delivery.hand);
  const laneId = dice.pick(place.laneIds);
  const lines = balls.map((ball) => ({ ball, line: lineOf(customer, ball, film, dice) }));
  const suiting = lines.find(({ ball, line }) => {
    const shot = shotOf(customer, ball, line, film);
    return shot.phases.breakpoint.board >= LEAST_BREAKPOINT_BOARD && Math.abs(boardAtPins(shot) - POCKET_BOARD) < 1;
  });
  if (suiting === undefined) return;
  const { ball, line } = suiting;
  const count = dice.whole(2, 4);
  for (let number = 0; number < count; number++) {
    const thrown = scattered(customer, line, dice);
    const shot = shotOf({ ...customer, delivery: thrown.delivery }, ball, thrown.line, film);
    await things.shotNotes.create(
      {
        bowlerId: customer.id,
        ballId: ball.id,
        houseId: place.houseId,
        laneId,
        patternId: place.patternId,
        at: clock.text(),
        game: 1,
        finish: ball.finish.polished ? `${ball.finish.number} + polish` : `${ball.finish.number}`,
        ...seenOf(shot),
        leave: leaveOf(shot, dice),
        note: "Invented.",
      },
      { by },
    );
    yield clock.now() + BETWEEN_SHOTS;
  }
}

/** What can be seen of a shot: of one that fell into the gutter nothing after that, though the model goes on. */
export function seenOf({ samples, phases, gutter }: Pick<Shot, "samples" | "phases" | "gutter">) {
  const untilFt = gutter?.yFt ?? Number.POSITIVE_INFINITY;
  const speed = gutter === null ? phases.speedAtPinsMph : null;
  const isOnLane = phases.breakpoint.board >= 0 && phases.breakpoint.yFt < untilFt;
  return {
    boards: samples
      .filter(({ offLane, yFt }) => !offLane && yFt < untilFt)
      .map(({ yFt, board }) => ({ atFt: Math.round(yFt), board: toEye(board) })),
    breakpointBoard: isOnLane ? toEye(phases.breakpoint.board) : null,
    breakpointFt: isOnLane ? Math.round(phases.breakpoint.yFt) : null,
    speedMph: speed === null ? null : Math.round(10 * speed) / 10,
    speedAt: speed === null ? null : ("pins" as const),
  };
}

function toEye(board: number): number {
  return EYE_BOARDS * Math.round(board / EYE_BOARDS);
}

/** Boards from the head pin that the table of the pins knows of. */
const KNOWN_BOARDS = 6;

/** Pins left, drawn from what the table of the pins says of this hit: all of them after a ball in the gutter, null for a hit that it does not know. */
function leaveOf({ samples, reachedPins }: Shot, dice: Dice): number[] | null {
  const hit = samples.find(({ yFt }) => Math.abs(yFt - PINS_FT) < 1e-6);
  if (!reachedPins || hit === undefined) return [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  if (Math.abs(hit.board - HEAD_PIN_BOARD) > KNOWN_BOARDS) return null;
  const { strike, leaves } = carryOf([{ board: hit.board, entryDeg: hit.entryAngleDeg, quality: TYPICAL_QUALITY }]);
  return [...pinsOf(dice.weighted<Leave>([[STRIKE, strike], ...leaves.map(({ leave, share }) => [leave, share] as const)]))];
}

/** From a place that suits the hook, the launch angle that brings this ball to the pocket: halving the interval. */
function lineOf(customer: Customer, ball: CustomerBall, film: FilmMap, dice: Dice): Line {
  const much = (customer.delivery.revRateRpm - 200) / 300;
  const laydownBoard = Math.min(LAYDOWN.to, Math.max(LAYDOWN.from, LAYDOWN.from + 12 * much + dice.normal(0, 1)));
  let [low, high] = [-2, 5];
  for (let i = 0; i < TRIES; i++) {
    const middle = (low + high) / 2;
    const board = boardAtPins(shotOf(customer, ball, { laydownBoard, launchAngleDeg: middle }, film));
    // A wider angle ends further outside: a lower board.
    if (board > POCKET_BOARD) low = middle;
    else high = middle;
  }
  return { laydownBoard, launchAngleDeg: (low + high) / 2 };
}

function boardAtPins({ samples }: Shot): number {
  return samples[samples.length - 1]?.board ?? 0;
}

function scattered({ delivery }: Customer, line: Line, dice: Dice) {
  const { spread } = delivery;
  return {
    delivery: {
      ...delivery,
      speedMph: dice.normal(delivery.speedMph, spread.speedMph),
      revRateRpm: dice.normal(delivery.revRateRpm, spread.revRateRpm),
      axisRotationDeg: dice.normal(delivery.axisRotationDeg, spread.axisRotationDeg),
    },
    line: {
      laydownBoard: dice.normal(line.laydownBoard, spread.laydownBoards),
      launchAngleDeg: dice.normal(line.launchAngleDeg, spread.launchAngleDeg),
    },
  };
}

function shotOf({ delivery }: Customer, ball: CustomerBall, line: Line, film: FilmMap): Shot {
  const setup: ShotSetup = {
    seed: 1,
    bowler: delivery,
    ball: { ...TYPICAL_BALL, name: ball.name, cover: ball.cover, job: ball.job, finish: ball.finish },
    line,
    surface: { kind: "lane", lane: { pattern: { kind: "named", id: "medium-41" }, playedShots: 0 } },
    model: {
      motion: "averaged",
      slipRegularisationMps: 0.05,
      rollingResistance: ASSUMED["roll.resistance"],
      startFt: 0,
      gravity: 9.80665,
      coreOrientation: null,
    },
    atFt: SEEN_AT_FT,
  };
  return simulateShot(setup, ASSUMED, film);
}
