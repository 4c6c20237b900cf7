import { z } from "zod";
import { MIDDLE_COVER } from "#engine/ball/covers";
import { TYPICAL_BALL } from "#engine/ball/typical";
import { type BowlerMeasured, type BowlerSeen, measureBowler, type ShotSeen } from "#engine/learning/delivery/measureBowler";
import { ballField, type JobBall } from "./job/ball.ts";
import { bowlerField } from "./job/bowler.ts";
import { count, mapping, quantity } from "./job/fields.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";
import { laneField } from "./job/lane.ts";
import { resolveBall } from "./resolve/ball.ts";
import { resolveBowler } from "./resolve/bowler.ts";
import { DefaultsTaken } from "./resolve/defaultsTaken.ts";
import { resolveLane } from "./resolve/lane.ts";

const MOST_SHOTS = 100;
const frames = quantity("frames", { above: 0, to: 100_000 }, "Pictures from the first moment to the last");
const seconds = quantity("s", { above: 0, to: 60 }, "Time from the first moment to the last");
const radii = { from: -1, to: 1 };
const alongFt = quantity("ft", { from: 0, to: 60 }, "Distance from the foul line");
const overSurface = { from: -13.5, to: 13.5 };

/** A length of time is given in pictures or in seconds, one of the two. */
function oneClock(given: { readonly frames?: number | undefined; readonly seconds?: number | undefined }, context: z.RefinementCtx): void {
  if ((given.frames === undefined) !== (given.seconds === undefined)) return;
  context.addIssue({ code: "custom", message: "frames or seconds, one of the two", input: given, params: { reason: "onlyOneOf" } });
}

const timed = mapping(
  { fromFt: alongFt, toFt: alongFt, frames: frames.optional(), seconds: seconds.optional() },
  "Time the ball takes between two distances",
).superRefine((given, context) => {
  oneClock(given, context);
  if (given.fromFt < given.toFt) return;
  context.addIssue({ code: "custom", path: ["toFt"], message: `more than fromFt, ${given.fromFt}`, input: given.toFt });
});

const display = mapping(
  {
    speedMph: quantity("mph", { above: 0, to: 40 }, "What the display shows"),
    atFt: alongFt.optional(),
    withinMph: quantity("mph", { from: 0, to: 5 }, "How far it may be out either way").optional(),
  },
  "The centre's display, which measures near the pins",
);

const place = {
  right: quantity("", radii, "Right of the ball's middle, in radii of the ball"),
  up: quantity("", radii, "Above it, in radii"),
};

const shot = mapping(
  {
    timed: timed.optional(),
    display: display.optional(),
    turns: mapping(
      {
        turns: quantity("turns", { above: 0, to: 100 }, "Whole turns, or parts of them, that were counted"),
        frames: frames.optional(),
        seconds: seconds.optional(),
      },
      "Turns of the ball in a time, just after the release",
    )
      .superRefine(oneClock)
      .optional(),
    marks: z
      .array(mapping({ frame: count("", { from: 0, to: 100_000 }, "Which picture"), ...place }, "The mark in one picture"), {
        error: "a list of pictures",
      })
      .min(2, { error: "2 to 20 pictures of one mark" })
      .max(20, { error: "2 to 20 pictures of one mark" })
      .optional(),
    known: z
      .array(
        mapping(
          {
            overIn: quantity("in", overSurface, "Over from the middle of the grip, towards the hand's side"),
            upIn: quantity("in", overSurface, "Up from there"),
            ...place,
          },
          "A mark of known place",
        ),
        { error: "a list of two marks" },
      )
      .length(2, { error: "two marks of known place, in one picture" })
      .optional(),
  },
  "What was seen of one shot",
).superRefine((given, context) => {
  if (given.timed === undefined || given.display === undefined) return;
  context.addIssue({ code: "custom", message: "timed or display, not both", input: given, params: { reason: "onlyOneOf" } });
});

/** What `delivery` reads: filmed shots, and what is known of the bowler, the ball and the lane without them. */
export const deliveryFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    bowler: bowlerField.optional(),
    ball: ballField.optional(),
    lane: laneField.optional(),
    camera: mapping(
      {
        framesPerSecond: quantity("1/s", { above: 0, to: 10_000 }, "Pictures a second").optional(),
        downDeg: quantity("deg", { from: 0, to: 60 }, "How far the camera, behind the bowler, looks down").optional(),
        markWithin: quantity("", { from: 0, to: 0.5 }, "How far a mark may be misread either way, in radii of the ball").optional(),
        launchAngleDeg: quantity("deg", { from: -15, to: 15 }, "Direction of the ball, outward positive").optional(),
        frameWithin: quantity("frames", { from: 0, to: 10 }, "How far a count of pictures may be out either way").optional(),
      },
      "How the pictures were taken",
    ).optional(),
    shots: z
      .array(shot, { error: "a list of shots" })
      .min(1, { error: `1 to ${MOST_SHOTS} shots` })
      .max(MOST_SHOTS, { error: `1 to ${MOST_SHOTS} shots` }),
  },
  "Filmed shots of one bowler",
);

export type DeliveryFile = z.output<typeof deliveryFileSchema>;
type FileShot = DeliveryFile["shots"][number];

/** A telephone behind the bowler, and how well it is read: *common practice*. */
const USUAL_CAMERA = { framesPerSecond: 60, downDeg: 8, markWithin: 0.06, launchAngleDeg: 0, frameWithin: 1 };
/** By how much a ball slows hardly depends on it. */
const USUAL_BALL: JobBall = { cover: MIDDLE_COVER, finish: TYPICAL_BALL.finish };
/** The display measures near the pins and shows tenths. */
const USUAL_DISPLAY = { atFt: 60, withinMph: 0.1 };
/** A stopwatch in the hand, s either way: common practice. */
const STOPWATCH_WITHIN = 0.1;

/** The delivery that the file's shots tell, and which of its fields were left to a default. */
export function deliveryOf(file: DeliveryFile): { seen: BowlerSeen; measured: BowlerMeasured; defaults: readonly string[] } {
  const defaults = new DefaultsTaken();
  const { camera } = file;
  const taken = (key: keyof typeof USUAL_CAMERA): number => defaults.or(`camera.${key}`, camera?.[key], USUAL_CAMERA[key]);
  const clock = { framesPerSecond: taken("framesPerSecond"), frameWithin: taken("frameWithin") };
  const seen: BowlerSeen = {
    camera: { downDeg: taken("downDeg"), markWithin: taken("markWithin"), launchAngleDeg: taken("launchAngleDeg") },
    bowler: resolveBowler(file.bowler, defaults),
    ball: resolveBall(file.ball ?? USUAL_BALL, defaults),
    pattern: file.lane === undefined ? null : resolveLane({ playedShots: 0, ...file.lane }, defaults).pattern,
    shots: file.shots.map((one) => shotSeen(one, clock)),
  };
  return { seen, measured: measureBowler(seen), defaults: defaults.paths };
}

interface Clock {
  readonly framesPerSecond: number;
  readonly frameWithin: number;
}

function shotSeen({ timed, display, turns, marks, known }: FileShot, clock: Clock): ShotSeen {
  const [first, second] = known ?? [];
  return {
    speed: speedSeen(timed, display, clock),
    turns: turns === undefined ? null : { turns: turns.turns, ...timeOf(turns, clock) },
    marks: marks?.map(({ frame, ...place }) => ({ ...place, seconds: (frame - marks[0].frame) / clock.framesPerSecond })) ?? null,
    known: first && second ? [first, second] : null,
  };
}

function speedSeen(timed: FileShot["timed"], display: FileShot["display"], clock: Clock): ShotSeen["speed"] {
  if (timed !== undefined) return { kind: "timed", fromFt: timed.fromFt, toFt: timed.toFt, ...timeOf(timed, clock) };
  if (display === undefined) return null;
  return {
    kind: "display",
    speedMph: display.speedMph,
    atFt: display.atFt ?? USUAL_DISPLAY.atFt,
    withinMph: display.withinMph ?? USUAL_DISPLAY.withinMph,
  };
}

function timeOf(given: { readonly frames?: number | undefined; readonly seconds?: number | undefined }, clock: Clock) {
  if (given.frames === undefined) return { seconds: given.seconds ?? 0, withinSeconds: STOPWATCH_WITHIN };
  return { seconds: given.frames / clock.framesPerSecond, withinSeconds: clock.frameWithin / clock.framesPerSecond };
}

/** The measured delivery as a bowler of a job file: what was measured, rounded to what the figures carry, and the spread where several shots tell one. */
export function jobBowlerOf({ seen, measured }: { seen: BowlerSeen; measured: BowlerMeasured }): z.input<typeof bowlerField> {
  const numbers = DELIVERY_NUMBERS.filter((key) => measured[key].from === "measured");
  const spreads = DELIVERY_NUMBERS.flatMap((key) => {
    const { spread } = measured[key];
    return key === "axisTiltDeg" || spread === null || spread === 0 ? [] : [[key, Number(spread.toFixed(2))] as const];
  });
  return {
    name: seen.bowler.name,
    hand: seen.bowler.hand,
    ...Object.fromEntries(numbers.map((key) => [key, Number(measured[key].mean.value.toFixed(key === "revRateRpm" ? 0 : 1))])),
    ...(spreads.length === 0 ? {} : { spread: Object.fromEntries(spreads) }),
  };
}

export const DELIVERY_NUMBERS = ["speedMph", "revRateRpm", "axisRotationDeg", "axisTiltDeg"] as const;
