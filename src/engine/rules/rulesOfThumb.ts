import { coverOf } from "../ball/ball.ts";
import type { CoverRule } from "../ball/covers.ts";
import { byRoughness, effectiveRaUm, type Finish, parseFinish } from "../surface/finish.ts";
import { BURNT_FROM, type RuleAnswer, type RuleCase, TRANSITION_FROM } from "./ruleCase.ts";

/** A rule of thumb of the trade: when it speaks, and whether a computed answer agrees. Its sentence is in `words/` under `rule.<id>`. */
export interface RuleOfThumb {
  readonly mark: "common practice";
  readonly applies: (asked: RuleCase) => boolean;
  /** Null where the answer does not let one say. */
  readonly agrees: (answer: RuleAnswer, asked: RuleCase) => boolean | null;
  /** The finishes it asks for, where it asks for finishes. */
  readonly range: readonly [string, string] | null;
  /** A case in which it speaks and one in which it does not: a test walks them. */
  readonly example: { readonly speaks: RuleCase; readonly silent: RuleCase };
}

const USUAL: RuleCase = {
  cover: "solid",
  job: "strike",
  speedClass: "matched",
  speedMph: 17.5,
  oil: "medium",
  playedShots: 0,
  lengthFt: 41,
};

/** A rule that asks for a range of finishes: the answer agrees if its pick lies in the range. */
function asksFor(
  from: string,
  to: string,
  applies: (asked: RuleCase) => boolean,
  speaks: Partial<RuleCase>,
  silent: Partial<RuleCase>,
): RuleOfThumb {
  const most = effectiveRaUm(parseFinish(from)) + 1e-9;
  const least = effectiveRaUm(parseFinish(to)) - 1e-9;
  const inside = (finish: Finish) => effectiveRaUm(finish) <= most && effectiveRaUm(finish) >= least;
  return {
    mark: "common practice",
    applies,
    agrees: ({ pick }) => pick && inside(pick),
    range: [from, to],
    example: { speaks: { ...USUAL, ...speaks }, silent: { ...USUAL, ...silent } },
  };
}

const strikes = ({ job }: RuleCase) => job === "strike";
/** Whether the ball's cover is one that the rule speaks of: its record says so. */
const isOf =
  (rule: CoverRule) =>
  ({ cover }: RuleCase): boolean =>
    cover !== null && coverOf(cover).rules.includes(rule);
const weakHook = ({ speedClass, oil }: RuleCase) => speedClass === "speedDominant" || (oil === "heavy" && speedClass === "matched");
const strongHook = ({ speedClass, speedMph }: RuleCase) => speedClass === "revDominant" || speedMph <= 13;

export const RULES_OF_THUMB = {
  urethaneRange: asksFor("360", "1000", isOf("urethaneRange"), { cover: "urethane" }, {}),
  solidRange: asksFor("1000", "3000", (c) => isOf("solidRange")(c) && strikes(c) && !weakHook(c) && !strongHook(c), {}, { cover: "pearl" }),
  hybridRange: asksFor(
    "2000",
    "3000",
    (c) => isOf("hybridRange")(c) && strikes(c) && !weakHook(c) && !strongHook(c),
    { cover: "hybrid" },
    { speedClass: "revDominant", cover: "hybrid" },
  ),
  pearlRange: asksFor(
    "2000",
    "4000",
    (c) => isOf("pearlRange")(c) && strikes(c) && !strongHook(c) && c.playedShots < BURNT_FROM,
    { cover: "pearl" },
    { cover: "pearl", playedShots: 60 },
  ),
  weakHookDull: asksFor("500", "2000", (c) => isOf("weakHookDull")(c) && strikes(c) && weakHook(c), { speedClass: "speedDominant" }, {}),
  strongHookSmooth: asksFor(
    "3000",
    "4000 + polish",
    (c) => isOf("strongHookSmooth")(c) && strikes(c) && strongHook(c),
    { speedClass: "revDominant" },
    { oil: "heavy" },
  ),
  burnSmooth: asksFor(
    "3000",
    "4000 + polish",
    (c) => isOf("burnSmooth")(c) && strikes(c) && c.playedShots >= BURNT_FROM,
    { playedShots: 60 },
    { playedShots: 20 },
  ),
  transitionHybrid: asksFor(
    "2000",
    "3000",
    (c) =>
      isOf("transitionHybrid")(c) &&
      strikes(c) &&
      c.speedClass === "matched" &&
      c.playedShots >= TRANSITION_FROM &&
      c.playedShots < BURNT_FROM,
    { cover: "hybrid", playedShots: 20 },
    { cover: "hybrid" },
  ),
  spareSmooth: asksFor(
    "3000",
    "4000 + polish",
    (c) => c.job === "spare" && isOf("spareSmooth")(c),
    { job: "spare", cover: "polyester" },
    {},
  ),
  dullerIsEarlier: {
    mark: "common practice",
    applies: ({ job }) => job === "strike" || job === "control",
    agrees: ({ onOneLine }) => ordered(onOneLine.map(({ finish, hookStartFt }) => ({ finish, value: hookStartFt }))),
    range: null,
    example: { speaks: USUAL, silent: { ...USUAL, job: "house" } },
  },
  exitBoard: {
    mark: "common practice",
    applies: (c) => strikes(c) && isOf("exitBoard")(c) && c.playedShots < BURNT_FROM && c.lengthFt >= 34,
    agrees: ({ exitBoard }, { lengthFt }) => (exitBoard === null ? null : Math.abs(exitBoard - (lengthFt - 31)) <= 4),
    range: null,
    example: { speaks: USUAL, silent: { ...USUAL, playedShots: 60 } },
  },
} as const satisfies Record<CoverRule, RuleOfThumb> & Record<string, RuleOfThumb>;

export type RuleId = keyof typeof RULES_OF_THUMB;
export const RULE_IDS = Object.keys(RULES_OF_THUMB) as readonly RuleId[];

/** True where a value never falls from dull to smooth; null where fewer than two are known. */
function ordered(points: readonly { readonly finish: Finish; readonly value: number | null }[]): boolean | null {
  const known = points.filter((point) => point.value !== null).toSorted((a, b) => byRoughness(a.finish, b.finish));
  if (known.length < 2) return null;
  return known.every((point, i) => i === 0 || (point.value ?? 0) >= (known[i - 1].value ?? 0) - 0.5);
}
