import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { bodyOf } from "#engine/ball/body";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { constantFriction, contactOf, filmMet, frictionCoefficient } from "#engine/contact/friction";
import { release } from "#engine/delivery/release";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { filmOfPattern } from "#engine/lane/film";
import { CELL_Y, COLUMNS, filmFrom, ROWS, volumeMl } from "#engine/lane/filmMap";
import { BOARD, PINS_PLANE } from "#engine/lane/geometry";
import { wearLaw, wornFilm } from "#engine/lane/wear";
import { emptyRun, runAveraged } from "#engine/motion/averaged";
import { type FullMechanics, fullRunTo, fullStart, spinOf } from "#engine/motion/full";
import type { ShotSetup } from "#engine/motion/shot";
import { simulateShot } from "#engine/motion/simulate";
import { carryOf, chanceOver, qualityShift, strikeAt, strikeMap, TYPICAL_QUALITY } from "#engine/pins/carry";
import { bestRoute } from "#engine/planning/bag/optimum";
import type { BagQuestion } from "#engine/planning/bag/question";
import { statesOf } from "#engine/planning/bag/states";
import { filmChange } from "#engine/planning/oilInPlay/filmChange";
import type { Player } from "#engine/planning/oilInPlay/player";
import { playSession } from "#engine/planning/oilInPlay/session";
import { USUAL_LIMITS } from "#engine/planning/question";
import { STYLES } from "#engine/planning/situations";
import { nudged } from "#engine/planning/thrown";
import { effectiveRaOfReadingUm, effectiveRaUm } from "#engine/surface/finish";
import { FOOT, INCH } from "#engine/units";
import { conjugate, dot, type Quaternion, rotate, turnBetween, unit } from "#engine/vector";

/** One gate per physical term, in a case where little else matters. tools/leaveOut.ts removes each term and demands that something here or beside turns red. */

const shotOf = (more: Partial<ShotSetup["ball"]>, motion: "full" | "averaged", seed: number): ShotSetup => ({
  seed,
  bowler: { ...STYLES.matched, spread: TYPICAL_SPREAD },
  ball: { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false }, ...more },
  line: { laydownBoard: 20, launchAngleDeg: 1.6 },
  surface: { kind: "given", friction: { kind: "twoZone", oil: 0.015, dry: 0.22, changeAtFt: 41, widthFt: 1 } },
  model: { motion, slipRegularisationMps: 0.02, rollingResistance: 0.003, startFt: 0.5, gravity: 9.80665, coreOrientation: null },
  atFt: [45, 59.5],
});

describe("core", () => {
  it.each([
    ["symmetric, pin 4.5 in", { rgIn: 2.48, differentialIn: 0.05, intermediateDifferentialIn: 0 }],
    ["asymmetric", { rgIn: 2.48, differentialIn: 0.055, intermediateDifferentialIn: 0.02 }],
    ["large differential", { rgIn: 2.46, differentialIn: 0.06, intermediateDifferentialIn: 0 }],
  ] as const)("the mean over its phase is the averaged model's: %s", (_name, ball) => {
    const full = Array.from({ length: 24 }, (_, seed) => simulateShot(shotOf(ball, "full", seed)).samples[1]);
    const averaged = simulateShot(shotOf(ball, "averaged", 0)).samples[1];
    const mean = (value: (sample: (typeof full)[number]) => number) => full.reduce((sum, sample) => sum + value(sample), 0) / full.length;
    expect(Math.abs(mean((sample) => sample.board) - averaged.board)).toBeLessThan(0.04);
    expect(Math.abs(mean((sample) => sample.entryAngleDeg) - averaged.entryAngleDeg)).toBeLessThan(0.04);
  });

  it("flare by the driven free top is the axis' way in the full model, to an eighth of an inch or so", () => {
    for (const pinToPapIn of [1.7, 3.4, 4.5, 5.5]) {
      const setup = shotOf({ rgIn: 2.48, differentialIn: 0.05, pinToPapIn }, "full", 3);
      const body = bodyOf(setup.ball);
      const start = release(setup.bowler, setup.line);
      const orientation: Quaternion = turnBetween(body.axisInBody, unit([start.wx, start.wy, start.wz]));
      const mechanics: FullMechanics = { body, rollingResistance: 0.003, slipRegularisation: 0.02, gravity: 9.80665 };
      const state = fullStart(mechanics, start, 0.5 * FOOT, orientation);
      const axisNow = () => unit(rotate(conjugate([state[8], state[9], state[10], state[11]]), spinOf(mechanics, state)));
      const first = axisNow();
      let widest = 0;
      const friction = constantFriction(0.06);
      fullRunTo(mechanics, friction, state, 45 * FOOT, 10, () => {
        widest = Math.max(widest, Math.acos(Math.min(1, dot(first, axisNow()))));
      });
      const shot = simulateShot({
        ...setup,
        surface: { kind: "given", friction: { kind: "constant", mu: 0.06 } },
        model: { ...setup.model, coreOrientation: orientation },
      });
      expect(Math.abs(shot.flare.to45FtIn - (widest * body.radius) / INCH), `pin ${pinToPapIn}`).toBeLessThan(0.15);
    }
  });

  it("flares most with the pin between 3 and 4 in from the axis and not at all on it (common practice)", () => {
    const flareAt = (pinToPapIn: number) =>
      simulateShot(shotOf({ rgIn: 2.48, differentialIn: 0.05, pinToPapIn }, "averaged", 0)).flare.to45FtIn;
    expect(flareAt(3.4)).toBeGreaterThan(flareAt(1.7));
    expect(flareAt(3.4)).toBeGreaterThan(flareAt(5.5));
    expect(flareAt(0)).toBeLessThan(0.01);
    expect(flareAt(6.75)).toBeLessThan(0.01);
  });
});

describe("rolling resistance", () => {
  it("slows a rolling ball by c g/(1 + κ): v² = v₀² − 2 a d (rolling on a level plane, closed form)", () => {
    const [speed, radius, kappa, resistance] = [7, 0.109, 0.35, 0.01];
    const expected = Math.sqrt(speed ** 2 - (2 * resistance * 9.80665 * PINS_PLANE) / (1 + kappa));
    const rolling = { x: 0, vx: 0, vy: speed, wx: -speed / radius, wy: 0, wz: 0 };
    const run = emptyRun();
    runAveraged(
      { radius, inertiaRatio: kappa, rollingResistance: resistance, slipRegularisation: 0.02, gravity: 9.80665 },
      constantFriction(0.2),
      rolling,
      0,
      run,
    );
    expect(run.vy).toBeCloseTo(expected, 6);
    const moment = kappa * 6.8 * radius ** 2;
    const mechanics: FullMechanics = {
      body: { mass: 6.8, radius, moments: [moment, moment, moment], axisInBody: [1, 0, 0] },
      rollingResistance: resistance,
      slipRegularisation: 1e-3,
      gravity: 9.80665,
    };
    const state = fullStart(mechanics, rolling, 0, [1, 0, 0, 0]);
    fullRunTo(mechanics, constantFriction(0.2), state, PINS_PLANE, 10);
    expect(state[4]).toBeCloseTo(expected, 3);
  });

  it("in the skid slows the spin: without it a hooking ball would roll faster", () => {
    const lasts = (rollingResistance: number) => {
      const setup = shotOf({}, "averaged", 0);
      return simulateShot({ ...setup, model: { ...setup.model, rollingResistance } }).samples[1];
    };
    const full = (rollingResistance: number) => {
      const setup = shotOf({ differentialIn: 0 }, "full", 0);
      return simulateShot({ ...setup, model: { ...setup.model, rollingResistance } }).samples[1];
    };
    const setup = shotOf({ differentialIn: 0 }, "averaged", 0);
    expect(
      Math.abs(simulateShot({ ...setup, model: { ...setup.model, rollingResistance: 0.02 } }).samples[1].board - full(0.02).board),
    ).toBeLessThan(0.02);
    expect(lasts(0.02).velocityMps[1]).toBeLessThan(lasts(0).velocityMps[1] - 0.1);
  });
});

describe("oil", () => {
  it("carried down the lane: on an even film the ball meets h(1 + α c (1 − e^(−y/ℓ))) (the integral in closed form)", () => {
    const a = assume();
    const met = filmMet(
      filmFrom(60, () => 2),
      "pearl",
      a,
    );
    const share = a["carriedOil.share"] * a["carriedOil.pearl"];
    for (const row of [0, 4, 20, 100, 200]) {
      const expected = 2 * (1 + share * (1 - Math.exp(-(row * CELL_Y) / (a["carriedOil.reach"] * FOOT))));
      expect(met[row * COLUMNS + 40]).toBeCloseTo(expected, 9);
    }
  });

  it("film ratio uses the composite roughness of ball and lane: half of the load on asperities at h = l₀ c √(Ra² + Ra_lane²)", () => {
    const a = assume();
    const contact = contactOf("solid", 0.7, a);
    const half = a["friction.filmRatio"] * a["filmReach.solid"] * Math.sqrt(0.7 ** 2 + a["friction.laneRoughness"] ** 2);
    expect(frictionCoefficient(contact, half)).toBeCloseTo((a["friction.dry.solid"] + a["friction.oil"]) / 2, 12);
    expect(frictionCoefficient(contact, 0)).toBeCloseTo(a["friction.dry.solid"], 12);
    expect(frictionCoefficient(contact, 1000)).toBeCloseTo(a["friction.oil"], 5);
  });

  it("below a film ratio of 1 friction is boundary-like, above 3 mostly the oil's (film-ratio regimes; from memory)", () => {
    const a = assume();
    const composite = Math.hypot(0.45, a["friction.laneRoughness"]);
    const contact = contactOf("hybrid", 0.45, a);
    const share = (ratio: number) =>
      (frictionCoefficient(contact, ratio * composite) - a["friction.oil"]) / (a["friction.dry.hybrid"] - a["friction.oil"]);
    expect(share(0.3)).toBeGreaterThan(0.5);
    expect(share(3)).toBeLessThan(0.1);
  });
});

describe("wear of the film", () => {
  const film = filmOfPattern({ kind: "named", id: "medium-41" });
  const track = { x: new Float64Array(ROWS).fill(6 * BOARD), scatter: new Float64Array(ROWS).fill(1.2 * BOARD), share: 1 };

  it.each(["solid", "urethane", "polyester"] as const)("%s: film left and oil taken are the film before", (cover) => {
    const worn = wornFilm(film, [track], 20, wearLaw(cover, 0.7, assume()));
    expect(worn.takenMl).toBeGreaterThan(0.1);
    expect(volumeMl(worn.film) + worn.takenMl).toBeCloseTo(volumeMl(film), 9);
  });

  it("polyester lays down again most of what it takes, reactive resin keeps it (common practice: carrydown)", () => {
    const down = (cover: "solid" | "polyester") => {
      const worn = wornFilm(film, [track], 20, wearLaw(cover, 0.7, assume())).film;
      let beyond = 0;
      for (let row = 4 * 42; row < ROWS; row++)
        for (let column = 0; column < COLUMNS; column++) beyond += worn.um[row * COLUMNS + column] - film.um[row * COLUMNS + column];
      return beyond;
    };
    expect(down("polyester")).toBeGreaterThan(3 * down("solid"));
    expect(down("solid")).toBeGreaterThan(0);
  });

  it("a rougher ball takes more (common practice)", () => {
    const taken = (ra: number) => wornFilm(film, [track], 1, wearLaw("solid", ra, assume())).takenMl;
    expect(taken(1.1)).toBeGreaterThan(1.2 * taken(0.2));
  });

  it("takes most in the middle of the track, a Gaussian's share beside it", () => {
    const law = { removal: 0.05, footprint: 0.55 * BOARD, laidDown: 0, reach: 1 };
    const narrow = { x: new Float64Array(ROWS), scatter: new Float64Array(ROWS), share: 1 };
    const worn = wornFilm(
      filmFrom(60, () => 1),
      [narrow],
      1,
      law,
    ).film;
    const middle = (COLUMNS - 1) / 2;
    expect(1 - worn.um[100 * COLUMNS + middle]).toBeCloseTo(0.05, 12);
    expect(1 - worn.um[100 * COLUMNS + middle + 1]).toBeCloseTo(0.05 * Math.exp(-0.5 * (0.5 / 0.55) ** 2), 12);
  });

  it("shots that scatter share the oil they take over a wider track: in the middle η w/√(w² + s²) (convolution of Gaussians)", () => {
    const law = { removal: 0.05, footprint: 0.55 * BOARD, laidDown: 0, reach: 1 };
    const scattered = { x: new Float64Array(ROWS), scatter: new Float64Array(ROWS).fill(2 * BOARD), share: 1 };
    const worn = wornFilm(
      filmFrom(60, () => 1),
      [scattered],
      1,
      law,
    ).film;
    expect(1 - worn.um[100 * COLUMNS + (COLUMNS - 1) / 2]).toBeCloseTo((0.05 * 0.55) / Math.hypot(0.55, 2), 12);
  });
});

describe("carry", () => {
  const map = strikeMap(assume());
  const pocket = { board: 17.2, entryDeg: 4, quality: TYPICAL_QUALITY };
  const chance = (quality: Partial<typeof TYPICAL_QUALITY>) =>
    chanceOver([{ ...pocket, quality: { ...TYPICAL_QUALITY, ...quality } }]).value;

  it("a light ball is deflected more and strikes less (common practice), and so does a slow one (computed with the pins)", () => {
    expect(chance({ massLb: 12 })).toBeLessThan(chance({ massLb: 16 }));
    expect(chance({ speedMph: 12 })).toBeLessThan(chance({ speedMph: 18 }));
  });

  it("slip left in the contact costs strikes: the ball has not finished its work (common practice)", () => {
    expect(chance({ slipMps: 2.5 })).toBeLessThan(chance({ slipMps: 0 }));
  });

  it("what was not simulated is held at the edge", () => {
    expect(qualityShift({ ...TYPICAL_QUALITY, massLb: 12 }, { ...TYPICAL_QUALITY, massLb: 6 })).toBe(0);
  });

  it("a chance nudged by the speed and slip of a line is within 0.005 of the exact logistic shift for moves up to a half (computed)", () => {
    for (let p = 0; p <= 1.0001; p += 0.02) {
      for (let by = -0.5; by <= 0.5001; by += 0.1) {
        const exact = p <= 0 || p >= 1 ? p : 1 / (1 + ((1 - p) / p) * Math.exp(-by));
        expect(Math.abs(nudged(Math.min(1, p), by) - Math.min(1, exact))).toBeLessThan(0.005);
      }
    }
  });

  it("the nose is no strike, the pocket is; steep from the other side is the same hit in a mirror", () => {
    expect(strikeAt(map, 20, 4)).toBeLessThan(0.3);
    expect(strikeAt(map, 17.2, 4)).toBeGreaterThan(0.8);
    expect(strikeAt(map, 22.8, -4)).toBeCloseTo(strikeAt(map, 17.2, 4), 9);
  });

  it("the level moves the chance, and the leaves share what the strikes leave over", () => {
    const level = (rank: number) => strikeAt(strikeMap({ ...assume(), "carry.level": rank }), 16.3, 4);
    expect(level(0.1)).toBeLessThan(level(0.5));
    expect(level(0.5)).toBeLessThan(level(0.9));
    const [light, heavy] = [12, 16].map((massLb) => carryOf([{ ...pocket, quality: { ...TYPICAL_QUALITY, massLb } }]));
    expect(light.pinsDown).toBeLessThan(heavy.pinsDown);
    expect(light.leaves[0].share).toBeGreaterThan(heavy.leaves[0].share);
  });
});

describe("lane's edge", () => {
  it("a ball sent into the gutter says where and on which side, and goes on past the edge", () => {
    const shot = simulateShot({
      ...shotOf({}, "full", 0),
      line: { laydownBoard: 8, launchAngleDeg: 3 },
      surface: { kind: "given", friction: { kind: "constant", mu: 0.005 } },
    });
    expect(shot.gutter?.side).toBe("right");
    expect(shot.gutter?.yFt).toBeCloseTo((7.5 * BOARD) / Math.tan((3 * Math.PI) / 180) / FOOT + 0.5, 0);
    expect(shot.reachedPins).toBe(false);
    expect(shot.samples.every((sample) => sample.offLane)).toBe(true);
    expect(shot.course.boardAtPins).toBeNull();
  });

  it("a left-hander is the mirror image in true lane axes", () => {
    const right = simulateShot(shotOf({}, "full", 5));
    const setup = shotOf({}, "full", 5);
    const left = simulateShot({ ...setup, bowler: { ...setup.bowler, hand: "left" } });
    left.samples.forEach((sample, i) => {
      expect(sample.xM).toBe(-right.samples[i].xM);
      expect(sample.board).toBe(right.samples[i].board);
      expect(sample.entryAngleDeg).toBe(right.samples[i].entryAngleDeg);
      expect(sample.velocityMps[0]).toBe(-right.samples[i].velocityMps[0]);
      expect(sample.omegaRadps[1]).toBe(-right.samples[i].omegaRadps[1]);
      expect(sample.omegaRadps[0]).toBe(right.samples[i].omegaRadps[0]);
    });
  });
});

describe("a house's own oil and boards", () => {
  const film = filmFrom(44, () => 2);
  const at = (f: number, ft: number) => {
    const usual = filmMet(film, "hybrid", assume());
    const tilted = filmMet(film, "hybrid", assume({ "house.frontOil": f }));
    const place = ft * 4 * COLUMNS + 40;
    return tilted[place] / usual[place];
  };

  it("front against back: f at the foul line, none at 20 ft, 1/f at 40 ft (as defined)", () => {
    expect(at(1.2, 0)).toBeCloseTo(1.2, 12);
    expect(at(1.2, 20)).toBeCloseTo(1, 12);
    expect(at(1.2, 40)).toBeCloseTo(1 / 1.2, 12);
    expect(at(1, 30)).toBe(1);
  });

  it("dry boards: friction on the dry by the factor, friction on oil untouched (as defined)", () => {
    const [usual, grippy] = [assume(), assume({ "house.dry": 1.1 })].map((a) => contactOf("solid", 0.5, a));
    expect(grippy.dry / usual.dry).toBeCloseTo(1.1, 12);
    expect(grippy.oil).toBe(usual.oil);
  });
});

describe("oil in play", () => {
  const player = (hand: "right" | "left"): Player => ({
    bowler: { ...STYLES.matched, hand, spread: TYPICAL_SPREAD },
    ball: { ...TYPICAL_BALL, name: "", cover: "hybrid", finish: { number: 2000, polished: false } },
    limits: USUAL_LIMITS,
    line: null,
    shotsAGame: 30,
  });
  const play = (hand: "right" | "left") =>
    playSession({ seed: 1, pattern: { kind: "named", id: "medium-41" }, players: [player(hand)], games: 2, assumptions: {} });

  it("a left-hander wears the mirrored lane: his own side as a right-hander wears hers", () => {
    const [right, left] = [play("right"), play("left")];
    const wornOn = (lanes: typeof right, hand: "right" | "left") => filmChange(lanes[0].film, lanes[2].film, hand).burn;
    expect(wornOn(left, "left")).toEqual(wornOn(right, "right"));
    expect(wornOn(left, "right").share).toBeGreaterThan(wornOn(left, "left").share + 0.1);
  });

  it("as the oil goes the bowler moves in (common practice)", () => {
    const lanes = play("right");
    expect(lanes[2].players[0].line.laydownBoard).toBeGreaterThan(lanes[0].players[0].line.laydownBoard);
  });
});

describe("a bag", () => {
  it("a change of ball is made only where it brings more than it costs (as defined)", () => {
    const worth = [
      [1, 0.9],
      [0.8, 1],
    ];
    expect(bestRoute(worth, 2, 0.05)).toEqual({ sequence: [0, 1], worth: 1.95 });
    expect(bestRoute(worth, 2, 0.2)).toEqual({ sequence: [0, 0], worth: 1.9 });
  });

  it("a dull ball with games on it is smoother than the same finish fresh (sanded surfaces shine in the track; common practice)", () => {
    const bag = {
      balls: [
        { ball: { ...TYPICAL_BALL, name: "", cover: "solid", finish: { number: 1000, polished: false } }, gamesSince: 40, finishes: [] },
      ],
      assumptions: {},
      rules: { book: "usbc", on: "2026-11-25", event: null },
    } as unknown as BagQuestion;
    const [today] = statesOf(bag, 0);
    expect(effectiveRaOfReadingUm(today.as.raMicroinch ?? 1e9, assume())).toBeLessThan(
      0.8 * effectiveRaUm({ number: 1000, polished: false }),
    );
  });
});
