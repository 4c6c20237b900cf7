import { describe, expect, it } from "vitest";
import { assume } from "#engine/assumptions";
import { TYPICAL_BALL } from "#engine/ball/typical";
import type { Bowler } from "#engine/delivery/bowler";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { volumeMl } from "#engine/lane/filmMap";
import { drawnField } from "#engine/planning/oilInPlay/field";
import { filmChange } from "#engine/planning/oilInPlay/filmChange";
import type { Player } from "#engine/planning/oilInPlay/player";
import { type LaneNow, laneAsLaid, PIECES_A_GAME, type PlayQuestion, playPiece, playSession } from "#engine/planning/oilInPlay/session";
import type { Limits } from "#engine/planning/question";

const LIMITS: Limits = { laydownBoard: [9, 36], launchAngleDeg: [-1.5, 4.5], breakpointBoard: [4, 39] };
const MEDIUM = { kind: "named", id: "medium-41" } as const;
/** Volume that the track of one ball holds: 3.6 mm × 40 ft × 2 µm (computed), scaled to the film met. */
const CEILING_ML_PER_UM = 0.088 / 2;

const matched: Bowler = {
  name: "Invented",
  hand: "right",
  speedMph: 17.5,
  revRateRpm: 320,
  axisRotationDeg: 45,
  axisTiltDeg: 14,
  spread: TYPICAL_SPREAD,
};
const player = (over: Partial<Player> = {}): Player => ({
  bowler: matched,
  ball: { ...TYPICAL_BALL, cover: "hybrid", finish: { number: 2000, polished: false } },
  limits: LIMITS,
  line: null,
  shotsAGame: 8.5,
  ...over,
});
const play = (players: readonly Player[], games: number, over: Partial<PlayQuestion> = {}): PlayQuestion => ({
  seed: 1,
  pattern: MEDIUM,
  players,
  games,
  assumptions: {},
  ...over,
});
const last = (lanes: readonly LaneNow[]) => lanes[lanes.length - 1];
const inPart = (lanes: readonly LaneNow[], hand: "right" | "left", from: number) =>
  filmChange(lanes[0].film, last(lanes).film, hand).left.find(({ along, boards }) => along === "middle" && boards[0] === from)?.share ??
  Number.NaN;

const league = playSession(play([player(), ...drawnField(7, 1, 8.5, LIMITS, 5, assume())], 2));

describe("a league of eight on a pair, two games", () => {
  it("conserves volume: what is left and what balls took off is what was laid", () => {
    const laid = league[0].volumeMl;
    for (const lane of league) {
      expect(lane.volumeMl).toBeCloseTo(volumeMl(lane.film), 9);
      expect(lane.volumeMl + lane.takenMl).toBeCloseTo(laid, 8);
    }
  });

  it("puts about 70 shots a game on each lane (common practice)", () => {
    expect(league[1].shots).toBeCloseTo(68, 9);
  });

  it("takes less oil in a shot than the whole track of a ball holds (3.6 mm wide; computed)", () => {
    const first = laneAsLaid(play([player()], 1));
    const after = playPiece(play([player()], 1), first);
    const perShot = after.takenMl / after.shots;
    // No film on the line is thicker than the pattern's middle.
    expect(perShot).toBeGreaterThan(0);
    expect(perShot).toBeLessThan(CEILING_ML_PER_UM * 5.4);
  });

  it("wears the boards about the second arrow most, and the outside least (common practice)", () => {
    expect(inPart(league, "right", 9)).toBeLessThan(inPart(league, "right", 15));
    expect(inPart(league, "right", 9)).toBeLessThan(inPart(league, "right", 1));
  });

  it("leaves the left-hander's side less worn than the right's: one of eight plays there (common practice)", () => {
    expect(inPart(league, "left", 9)).toBeGreaterThan(inPart(league, "right", 9) + 0.1);
    const { burn } = filmChange(league[0].film, last(league).film, "right");
    expect(burn.board).toBeGreaterThanOrEqual(8);
    expect(burn.board).toBeLessThanOrEqual(18);
  });

  it("moves right-handers inside as the track burns (common practice)", () => {
    const inside = (lane: LaneNow) => lane.players.slice(0, 7).reduce((sum, { line }) => sum + line.laydownBoard, 0) / 7;
    expect(inside(league[1])).toBeGreaterThan(inside(league[0]) + 0.5);
    expect(inside(league[2])).toBeGreaterThan(inside(league[1]));
  });
});

describe("a lane in play", () => {
  it("is the same for the same seed, and every figure is a number", () => {
    const again = playSession(play([player(), ...drawnField(2, 0, 8.5, LIMITS, 5, assume())], 1));
    expect(again).toEqual(playSession(play([player(), ...drawnField(2, 0, 8.5, LIMITS, 5, assume())], 1)));
    for (const { film } of again) for (const um of film.um) expect(Number.isFinite(um)).toBe(true);
  });

  it("is hardly changed by who goes first", () => {
    const [a, b] = drawnField(2, 0, 20, LIMITS, 9, assume());
    const held = (one: Player, laydownBoard: number): Player => ({ ...one, line: { laydownBoard, launchAngleDeg: 1.8 } });
    const one = last(playSession(play([held(a, 20), held(b, 20)], 1)));
    const other = last(playSession(play([held(b, 20), held(a, 20)], 1)));
    expect(Math.abs(one.volumeMl - other.volumeMl)).toBeLessThan(0.005 * one.takenMl);
  });

  it("burns faster under duller balls, and under more of them (common practice)", () => {
    const withFinish = (number: number) =>
      last(playSession(play([player({ ball: { ...player().ball, finish: { number, polished: false } } })], 1)));
    expect(withFinish(500).takenMl).toBeGreaterThan(1.05 * withFinish(4000).takenMl);
    const two = last(playSession(play([player(), player()], 1)));
    expect(two.takenMl).toBeGreaterThan(1.6 * last(playSession(play([player()], 1))).takenMl);
  });

  it("carries more oil down under urethane and polyester than under reactive covers (common practice)", () => {
    const carried = (cover: "urethane" | "polyester" | "hybrid") => {
      const lanes = playSession(
        play([player({ ball: { ...player().ball, cover }, line: { laydownBoard: 20, launchAngleDeg: 2 }, shotsAGame: 40 })], 1),
      );
      return filmChange(lanes[0].film, last(lanes).film, "right").carriedDownMl;
    };
    expect(carried("urethane")).toBeGreaterThan(2 * carried("hybrid"));
    expect(carried("polyester")).toBeGreaterThan(carried("urethane"));
  });

  it("is played in pieces that may be computed one by one", () => {
    const question = play([player()], 1);
    let now = laneAsLaid(question);
    for (let piece = 0; piece < PIECES_A_GAME; piece++) now = playPiece(question, now);
    expect(now).toEqual(playSession(question)[1]);
  });
});

describe("others of whom nothing is known", () => {
  it("are about the usual bowler, differ as said, and come out the same for the same seed", () => {
    const field = drawnField(400, 40, 8.5, LIMITS, 3, assume());
    const speeds = field.map(({ bowler }) => bowler.speedMph);
    const mean = speeds.reduce((a, b) => a + b) / 400;
    expect(mean).toBeGreaterThan(16.8);
    expect(mean).toBeLessThan(17.2);
    expect(field.filter(({ bowler }) => bowler.hand === "left")).toHaveLength(40);
    expect(new Set(field.map(({ ball }) => ball.cover)).size).toBe(5);
    expect(drawnField(400, 40, 8.5, LIMITS, 3, assume())).toEqual(field);
    expect(drawnField(3, 0, 8.5, LIMITS, 3, assume({ "play.fieldVariety": 0 })).map(({ bowler }) => bowler.revRateRpm)).toEqual([
      300, 300, 300,
    ]);
  });
});
