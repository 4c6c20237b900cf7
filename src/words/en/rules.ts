import type { RuleId } from "#engine/rules/rulesOfThumb";
import { fixed } from "../figures.ts";
import type { Params, Sentence } from "../params.ts";

const range = (p: Params) => `${p.text("from")} to ${p.text("to")}`;

/** The trade's rules of thumb as a technician would say them. All of them are common practice; none has a published source. */
export const RULE_SENTENCES: Readonly<Record<RuleId, Sentence>> = {
  urethaneRange: (p) => `Urethane: ${range(p)}. Where it still hooks too early, change the ball, not the surface.`,
  solidRange: (p) => `Reactive solid: ${range(p)}.`,
  hybridRange: (p) => `Reactive hybrid: about ${range(p)}.`,
  pearlRange: (p) => `Reactive pearl: ${range(p)}.`,
  weakHookDull: () => "More speed than revs, or heavy oil: 500 to 1000, sometimes 2000.",
  strongHookSmooth: () => "More revs than speed, or a slow ball with a lot of hand: leave the dull pads, 3000 to 4000, then polish.",
  burnSmooth: () => "On the burn: 3000 to 4000, polish on top.",
  transitionHybrid: (p) => `After the first transition: a hybrid at ${range(p)}.`,
  spareSmooth: () => "A polyester spare ball: smooth, polished.",
  dullerIsEarlier: () => "Duller hooks earlier, smoother and polished later.",
  exitBoard: (p) =>
    `The ball leaves the oil at about the pattern's length less 31: board ${fixed(p.number("board"), 0)} for ${fixed(p.number("lengthFt"), 0)} ft.`,
};
