import { z } from "zod";
import { FOOT } from "#engine/units";
import { type Sightings, USUAL_ERRORS } from "#engine/video/sightings";
import { mapping, oneOf, quantity } from "./job/fields.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";

const MOST_MARKS = 400;
const MOST_PICTURES = 20_000;
const onPicture = (description: string) => quantity("px", { from: -16_384, to: 32_768 }, description);
const side = (description: string) => quantity("px", { from: 64, to: 16_384 }, description);
const placeFt = (description: string) => quantity("ft", { from: -100, to: 100 }, description);

const mark = mapping(
  {
    u: onPicture("To the right from the picture's left edge"),
    v: onPicture("Down from its upper edge"),
    xFt: placeFt("To the right from the middle of the lane"),
    yFt: placeFt("Down the lane from the foul line"),
    zFt: placeFt("Up from the lane"),
  },
  "A point of the lane and where it is seen",
);

const seenTogether = ["u", "v", "radiusPx"] as const;

const picture = mapping(
  {
    tS: quantity("s", { from: -86_400, to: 86_400 }, "When the picture was taken"),
    u: onPicture("Middle of the ball's outline, to the right").optional(),
    v: onPicture("The same, down").optional(),
    radiusPx: quantity("px", { above: 0, to: 8192 }, "Mean radius of the outline").optional(),
    ball: z.null({ error: "null, where the ball is not seen" }).optional(),
  },
  "One picture: the ball in it, or null",
).superRefine((given, context) => {
  const there = seenTogether.filter((key) => given[key] !== undefined);
  if (given.ball === null ? there.length === 0 : there.length === seenTogether.length) return;
  context.addIssue({ code: "custom", message: "u, v and radiusPx, or ball: null", input: given, params: { reason: "onlyOneOf" } });
});

/** What `video` reads: where a tracker saw the lane and the ball. */
export const videoFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    image: mapping({ width: side("Width of the upright picture"), height: side("Its height") }, "Size of the picture"),
    hand: oneOf(["right", "left"], "The bowling hand"),
    marks: z.array(mark, { error: "a list of marks" }).max(MOST_MARKS, { error: `0 to ${MOST_MARKS} marks` }),
    pictures: z.array(picture, { error: "a list of pictures" }).max(MOST_PICTURES, { error: `0 to ${MOST_PICTURES} pictures` }),
  },
  "What a tracker saw in a video",
);

export type VideoFile = z.output<typeof videoFileSchema>;

/** Sightings as the engine takes them: metres, and only pictures with a ball, by time. */
export function sightingsOfFile({ image, hand, marks, pictures }: VideoFile): Sightings {
  return {
    picture: image,
    hand,
    marks: marks.map(({ u, v, xFt, yFt, zFt }) => ({ u, v, at: [xFt * FOOT, yFt * FOOT, zFt * FOOT] })),
    seen: pictures
      .flatMap(({ tS, u, v, radiusPx }) =>
        u === undefined || v === undefined || radiusPx === undefined ? [] : [{ t: tS, u, v, radius: radiusPx }],
      )
      .sort((a, b) => a.t - b.t),
    errors: USUAL_ERRORS,
  };
}
