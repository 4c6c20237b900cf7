import type { z } from "zod";
import { ARROW_IDS } from "#engine/delivery/arrows";
import { mapping, oneOf, quantity, text } from "./fields.ts";

export const SPEED_WORD_IDS = ["slow", "medium", "fast"] as const;
export const HOOK_WORD_IDS = ["little", "medium", "much"] as const;

const spread = mapping(
  {
    launchAngleDeg: quantity("deg", { from: 0, to: 10 }, "Of the launch angle").optional(),
    laydownBoards: quantity("boards", { from: 0, to: 10 }, "Of the laydown board").optional(),
    speedMph: quantity("mph", { from: 0, to: 10 }, "Of the launch speed").optional(),
    revRateRpm: quantity("rpm", { from: 0, to: 300 }, "Of the rev rate").optional(),
    axisRotationDeg: quantity("deg", { from: 0, to: 90 }, "Of the axis rotation").optional(),
  },
  "The bowler's own variation from shot to shot, as standard deviations",
);

const known = mapping(
  {
    speedMph: quantity("mph", { above: 0, to: 10 }, "Of the launch speed").optional(),
    revRateRpm: quantity("rpm", { above: 0, to: 300 }, "Of the rev rate").optional(),
    axisRotationDeg: quantity("deg", { above: 0, to: 90 }, "Of the axis rotation").optional(),
    axisTiltDeg: quantity("deg", { above: 0, to: 90 }, "Of the axis tilt").optional(),
  },
  "How well the bowler's mean numbers are known, as standard deviations; a number that is given was measured, one that is not was guessed",
);

export const bowlerField = mapping(
  {
    name: text("Who bowls").optional(),
    hand: oneOf(["right", "left"], "The bowling hand").optional(),
    speedMph: quantity("mph", { above: 0, to: 40 }, "Launch speed, at the foul line").optional(),
    revRateRpm: quantity("rpm", { from: 0, to: 1000 }, "Rev rate at release").optional(),
    axisRotationDeg: quantity(
      "deg",
      { from: -180, to: 180 },
      "Axis rotation: 0 forward roll, 90 side roll, negative the other way",
    ).optional(),
    axisTiltDeg: quantity("deg", { from: -90, to: 90 }, "Axis tilt").optional(),
    speed: oneOf(SPEED_WORD_IDS, "Launch speed in a word, where nobody has measured it").optional(),
    hook: oneOf(HOOK_WORD_IDS, "Rev rate, axis rotation and tilt in a word; a number beside it wins for its own field").optional(),
    plays: oneOf(ARROW_IDS, "Over which arrow the ball goes today, where no line is named").optional(),
    spread: spread.optional(),
    known: known.optional(),
  },
  "What the bowler gives the ball",
).superRefine((bowler, context) => {
  const speedIsTaken = bowler.speedMph !== undefined;
  const hookIsTaken = [bowler.revRateRpm, bowler.axisRotationDeg, bowler.axisTiltDeg].every((value) => value !== undefined);
  for (const [word, isTaken] of [
    ["speed", speedIsTaken],
    ["hook", hookIsTaken],
  ] as const) {
    if (bowler[word] === undefined || !isTaken) continue;
    context.addIssue({
      code: "custom",
      path: [word],
      message: "the numbers or the word, not both",
      input: bowler[word],
      params: { reason: "wordFillsNothing" },
    });
  }
});

export type JobBowler = z.output<typeof bowlerField>;
