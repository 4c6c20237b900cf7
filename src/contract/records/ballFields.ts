import { BALL_JOBS, COVER_IDS } from "#engine/ball/ball";
import type { Described } from "./described.ts";
import type { Role } from "./roles.ts";

/** Who may see a ball at the least, and who may change one. */
export const BALL_ROLES = { see: "reader", change: "counter" } as const satisfies Record<string, Role>;

const RADIUS = { above: 0, to: 10 };

/** What a ball is. What happened to it, whose it is and was, is no field of a form: `ball.ts` has that. */
export const BALL_FIELDS = {
  name: {
    type: "line",
    says: "What the ball is called in this shop",
    needed: true,
    personal: "no",
    found: "words",
    imported: ["ball"],
  },
  serial: {
    type: "line",
    says: "Serial number, as it stands on the ball",
    personal: "no",
    found: "serial",
    imported: ["serial number", "serial no"],
  },
  cover: { type: "word", says: "The cover; null where nobody knows it", words: COVER_IDS, imported: ["coverstock"] },
  job: { type: "word", says: "What the ball is in the bag for", words: BALL_JOBS, imported: [] },
  state: {
    type: "word",
    says: "What the ball is doing",
    words: ["in use", "resting", "stopped", "retired", "left the shop"],
    usual: "in use",
  },
  boxFinish: { type: "finish", says: "Finish when it was sold", imported: ["box finish", "factory finish"] },
  core: {
    type: "group",
    says: "Mass and core",
    fields: {
      massLb: { type: "figure", says: "Mass", unit: "lb", range: { above: 0, to: 50 }, imported: ["weight", "mass", "lb"] },
      diameterIn: { type: "figure", says: "Diameter", unit: "in", range: { from: 2, to: 20 } },
      rgIn: { type: "figure", says: "Low radius of gyration", unit: "in", range: RADIUS },
      differentialIn: { type: "figure", says: "High minus low radius of gyration", unit: "in", range: { from: 0, to: 5 } },
      intermediateDifferentialIn: { type: "figure", says: "High minus middle radius of gyration", unit: "in", range: { from: 0, to: 5 } },
    },
  },
  layout: {
    type: "group",
    says: "Layout",
    fields: {
      pinToPapIn: { type: "figure", says: "Pin to positive axis point, over the surface", unit: "in", range: { from: 0, to: 13.5 } },
      drillingAngleDeg: { type: "figure", says: "Drilling angle", unit: "deg", range: { from: -180, to: 180 } },
      valAngleDeg: { type: "figure", says: "Angle to the vertical axis line", unit: "deg", range: { from: -180, to: 180 } },
    },
  },
  heatLimitF: {
    type: "figure",
    says: "The most that its maker allows it to be warmed to; null where nobody has looked it up",
    unit: "°F",
    range: { from: 60, to: 200 },
  },
  purchasedOn: { type: "day", says: "When it was bought", imported: ["bought", "purchased"] },
  drilledOn: { type: "day", says: "When it was drilled", imported: ["drilled"] },
  warranty: {
    type: "group",
    says: "Warranty",
    fields: { until: { type: "day", says: "Until when" }, note: { type: "lines", says: "What it holds for" } },
  },
  notes: { type: "lines", says: "Notes", imported: ["note", "remarks"] },
} as const satisfies Described;
