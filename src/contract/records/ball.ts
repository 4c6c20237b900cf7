import type { z } from "zod";
import { GAMES_WORD_IDS } from "#engine/surface/gamesWords";
import { count, mapping, oneOf } from "../job/fields.ts";
import { BALL_FIELDS } from "./ballFields.ts";
import { shapeOf } from "./describedSchema.ts";
import { day, finishText, id, instant, keptAs, listOf, longText, maybe } from "./fields.ts";

/** One thing that happened to the surface. A finish is a history: what lies under the polish matters. */
const surfaceEvent = mapping(
  {
    at: instant,
    who: oneOf(["shop", "owner", "coin machine", "maker", "somebody else"], "Who worked on the surface"),
    finish: maybe(finishText),
    way: maybe(oneOf(["spinner", "hand, wet", "hand, dry", "machine"], "How it was put on")),
    ticketId: maybe(id),
    note: longText,
  },
  "Work on the surface",
);

export const ballWritten = mapping(
  {
    ...shapeOf(BALL_FIELDS),
    /** The owner of today; null for a ball of the house or one that nobody has claimed. */
    bowlerId: maybe(id),
    owners: listOf(mapping({ bowlerId: id, from: maybe(day), to: maybe(day) }, "An owner"), 50, "owners"),
    surface: listOf(surfaceEvent, 500, "pieces of work on the surface"),
    games: listOf(
      mapping(
        {
          at: instant,
          games: count("", { from: 0, to: 10_000 }, "Games since the entry before"),
          /** Told in a word where nobody counted them; `games` is then 0. */
          word: maybe(oneOf(GAMES_WORD_IDS, "About how many, since the work before")),
        },
        "Games bowled",
      ),
      2000,
      "entries of games",
    ),
    /** Found on the ball and still there: cracks, plugs, flat spots, wear of the track. */
    found: listOf(
      mapping(
        {
          at: instant,
          what: oneOf(["crack", "hollow sound", "plug", "flat spot", "track wear", "other"], "What"),
          note: longText,
        },
        "A find",
      ),
      100,
      "finds",
    ),
  },
  "A ball",
);
export const ballKept = keptAs(ballWritten);
export type BallWritten = z.input<typeof ballWritten>;
export type Ball = z.output<typeof ballKept>;
