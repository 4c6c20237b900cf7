import { z } from "zod";
import { type HitPoint, leaveSeen, TYPICAL_QUALITY } from "#engine/pins/carry";
import { type HitScatter, type Seen, TYPICAL_SCATTER } from "#engine/pins/explain";
import { type Leave, leaveText, parseLeave } from "#engine/pins/leave";
import { count, mapping, oneOf, quantity } from "./job/fields.ts";
import { JOB_FILE_VERSION } from "./job/jobFile.ts";

const MOST_LEAVES = 200;

const scatterField = mapping(
  {
    boards: quantity("board", { above: 0, to: 10 }, "Standard deviation of the board at the pins").optional(),
    entryDeg: quantity("deg", { above: 0, to: 5 }, "Standard deviation of the entry angle").optional(),
  },
  "How the bowler's hits scatter about their mean; usual figures where left out",
);

const hitField = mapping(
  {
    board: quantity("board", { from: 0, to: 40 }, "Board of the ball's centre at 59.5 ft, counted from the bowler's hand side"),
    entryDeg: quantity("deg", { from: -12, to: 12 }, "Entry angle towards the middle"),
    speedMph: quantity("mph", { above: 0, to: 40 }, "Speed at the pins").optional(),
    slipMps: quantity("m/s", { from: 0, to: 10 }, "Slip left in the contact").optional(),
    ballLb: quantity("lb", { above: 0, to: 40 }, "Weight of the ball").optional(),
    scatter: scatterField.optional(),
  },
  "One hit, or with a scatter the mean of many",
);

/** A leave as the trade writes it; YAML reads a lone pin as a number. */
export const leaveField = z
  .union([z.string(), z.int()], { error: "pins as 2-8-10, or X for a strike" })
  .transform((said, context): Leave => {
    try {
      return parseLeave(String(said), "leave");
    } catch {
      context.addIssue({ code: "custom", message: "pins from 1 to 10, each once, as 2-8-10; or X for a strike" });
      return z.NEVER;
    }
  });

const seenField = mapping(
  {
    leave: leaveField.describe("What was left standing: 10, 2-8-10, X"),
    times: count("times", { from: 1, to: 10_000 }, "How often; once where left out").optional(),
  },
  "A leave that was seen",
);

/** What `carry` reads: hits to look up, leaves to explain, or both. */
export const carryFileSchema = mapping(
  {
    gritwright: z.literal(JOB_FILE_VERSION, { error: String(JOB_FILE_VERSION) }).describe("Version of the file"),
    hand: oneOf(["right", "left"], "The bowler's hand; right where left out").optional(),
    hits: z
      .array(hitField, { error: "a list of hits" })
      .max(MOST_LEAVES, { error: `at most ${MOST_LEAVES} hits` })
      .optional(),
    seen: z
      .array(seenField, { error: "a list of leaves" })
      .max(MOST_LEAVES, { error: `at most ${MOST_LEAVES} leaves` })
      .optional(),
    scatter: scatterField.optional(),
  },
  "A carry file",
).superRefine(({ hits = [], seen = [] }, context) => {
  if (hits.length + seen.length > 0) return;
  context.addIssue({ code: "custom", message: "hits, seen or both", params: { reason: "onlyOneOf" } });
});

export type CarryFile = z.output<typeof carryFileSchema>;
type AskedHit = NonNullable<CarryFile["hits"]>[number];

export interface LookedUp {
  readonly hit: HitPoint;
  readonly scatter: HitScatter | null;
}

export function lookedUp({ board, entryDeg, speedMph, slipMps, ballLb, scatter }: AskedHit): LookedUp {
  const quality = {
    speedMph: speedMph ?? TYPICAL_QUALITY.speedMph,
    slipMps: slipMps ?? TYPICAL_QUALITY.slipMps,
    massLb: ballLb ?? TYPICAL_QUALITY.massLb,
  };
  return { hit: { board, entryDeg, quality }, scatter: scatter === undefined ? null : scatterOf(scatter) };
}

export function scatterOf(asked: CarryFile["scatter"]): HitScatter {
  return { boards: asked?.boards ?? TYPICAL_SCATTER.boards, entryDeg: asked?.entryDeg ?? TYPICAL_SCATTER.entryDeg };
}

/** What was seen, each leave once, as the right-hander of the table would have left it. */
export function seenLeaves({ seen = [], hand = "right" }: CarryFile): readonly Seen[] {
  const counts = new Map<string, Seen>();
  for (const { leave, times = 1 } of seen) {
    const own = leaveSeen(leave, hand);
    const name = leaveText(own);
    counts.set(name, { leave: own, count: (counts.get(name)?.count ?? 0) + times });
  }
  return [...counts.values()];
}
