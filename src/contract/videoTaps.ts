import { z } from "zod";
import type { Hand } from "#engine/delivery/bowler";
import { boardToX, HEAD_PIN, LANE_EDGE } from "#engine/lane/geometry";
import type { Vector } from "#engine/vector";
import type { Tap } from "#engine/video/findLane";
import { ARROWS } from "#engine/video/laneThings";
import { mapping, oneOf, quantity } from "./job/fields.ts";

const ARROW_BOARDS = [5, 10, 15, 20, 25, 30, 35] as const;
type TapName = "foulLeft" | "foulRight" | "headPinFoot" | `arrow${(typeof ARROW_BOARDS)[number]}`;

const px = z.number({ error: "px" }).gte(-16_384, { error: "−16384 ≤ x ≤ 32768 px" }).lte(32_768, { error: "−16384 ≤ x ≤ 32768 px" });
const point = (description: string) => z.tuple([px, px], { error: "[u, v], px" }).describe(description).optional();
const arrow = point("The arrow's tip; boards from the bowling hand's side");

/** What a user pointed at, in the first upright picture of a video. */
export const videoTapsSchema = mapping(
  {
    foulLeft: point("Left end of the foul line, at the lane's own edge"),
    foulRight: point("Its right end"),
    headPinFoot: point("Where the head pin stands"),
    arrow5: arrow,
    arrow10: arrow,
    arrow15: arrow,
    arrow20: arrow,
    arrow25: arrow,
    arrow30: arrow,
    arrow35: arrow,
    hand: oneOf(["right", "left"], "The bowling hand").optional(),
    captureFps: quantity("1/s", { from: 1, to: 2000 }, "Pictures a second when it was filmed, where it is stored slower").optional(),
  },
  "Where the lane is in a video",
);

export type VideoTaps = z.output<typeof videoTapsSchema>;

/** Fewer points than these do not begin a camera. */
export const LEAST_TAPS = 3;

/** The points as the engine takes them. @param scale of the picture that is read against the one that was pointed at */
export function tapsOf(given: VideoTaps, scale: number): Tap[] {
  const { hand = "right" } = given;
  return placesOf(hand).flatMap(([name, at]) => {
    const seen = given[name];
    return seen === undefined ? [] : [{ u: scale * seen[0], v: scale * seen[1], at }];
  });
}

function placesOf(hand: Hand): readonly (readonly [TapName, Vector])[] {
  const side = hand === "left" ? -1 : 1;
  return [
    ["foulLeft", [-LANE_EDGE, 0, 0]],
    ["foulRight", [LANE_EDGE, 0, 0]],
    ["headPinFoot", [0, HEAD_PIN, 0]],
    ...ARROW_BOARDS.map((board, i): readonly [TapName, Vector] => [`arrow${board}`, [side * boardToX(board), ARROWS[i][1], 0]]),
  ];
}
