import type { z } from "zod";
import { BALL_JOBS, COVER_IDS } from "#engine/ball/ball";
import { GAMES_WORD_IDS } from "#engine/surface/gamesWords";
import { count, mapping, oneOf, quantity, text } from "../job/fields.ts";
import { day, finishText, id, instant, keptAs, listOf, longText, maybe } from "./fields.ts";

const RADIUS = { above: 0, to: 10 };
export const BALL_STATES = ["in use", "resting", "stopped", "retired", "left the shop"] as const;

const core = mapping(
  {
    massLb: maybe(quantity("lb", { above: 0, to: 50 }, "Mass")),
    diameterIn: maybe(quantity("in", { from: 2, to: 20 }, "Diameter")),
    rgIn: maybe(quantity("in", RADIUS, "Low radius of gyration")),
    differentialIn: maybe(quantity("in", { from: 0, to: 5 }, "High minus low radius of gyration")),
    intermediateDifferentialIn: maybe(quantity("in", { from: 0, to: 5 }, "High minus middle radius of gyration")),
  },
  "Mass and core",
);

const layout = mapping(
  {
    pinToPapIn: maybe(quantity("in", { from: 0, to: 13.5 }, "Pin to positive axis point, over the surface")),
    drillingAngleDeg: maybe(quantity("deg", { from: -180, to: 180 }, "Drilling angle")),
    valAngleDeg: maybe(quantity("deg", { from: -180, to: 180 }, "Angle to the vertical axis line")),
  },
  "Layout",
);

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
    name: text("What the ball is called in this shop"),
    serial: maybe(text("Serial number, as it stands on the ball")),
    /** The owner of today; null for a ball of the house or one that nobody has claimed. */
    bowlerId: maybe(id),
    owners: listOf(mapping({ bowlerId: id, from: maybe(day), to: maybe(day) }, "An owner"), 50, "owners"),
    /** Null where nobody knows it. */
    cover: maybe(oneOf(COVER_IDS, "The cover")),
    job: maybe(oneOf([...BALL_JOBS], "What the ball is in the bag for")),
    state: oneOf(BALL_STATES, "What the ball is doing").default("in use"),
    core: maybe(core),
    layout: maybe(layout),
    boxFinish: maybe(finishText),
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
    /** The most that its maker allows it to be warmed to; null where nobody has looked it up. */
    heatLimitF: maybe(quantity("°F", { from: 60, to: 200 }, "Limit of the ball's maker on heat")),
    purchasedOn: maybe(day),
    drilledOn: maybe(day),
    warranty: maybe(mapping({ until: maybe(day), note: longText }, "Warranty")),
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
    notes: longText,
  },
  "A ball",
);
export const ballKept = keptAs(ballWritten);
export type BallWritten = z.input<typeof ballWritten>;
export type Ball = z.output<typeof ballKept>;
