import type { PlanMessageId } from "#engine/planning/messageIds";
import { boards, degrees, feet, fixed, inHundred, metresPerSecond } from "../figures.ts";
import type { Params, Sentence } from "../params.ts";
import { QUANTITY_WORDS } from "./limits.ts";
import { COVER_WORDS } from "./screens.ts";

type PlanSentenceId = Exclude<PlanMessageId, `rule.${string}` | `caution.${string}`>;

const line = (p: Params) => `laydown board ${fixed(p.number("laydownBoard"), 1)}, launch ${degrees(p.number("launchAngleDeg"))}`;

function quantityWord(quantity: string): string {
  return Object.entries(QUANTITY_WORDS).find(([id]) => id === quantity)?.[1][0] ?? quantity;
}

/** Covers as the engine lists them: solid,hybrid. */
function coversText(ids: string): string {
  const words: Readonly<Record<string, string>> = COVER_WORDS;
  return new Intl.ListFormat("en", { type: "conjunction" }).format(ids.split(",").map((id) => words[id] ?? id));
}

/** Why the plan says what it says, for the technician. "In 100" counts shots. */
export const PLAN_SENTENCES: Readonly<Record<PlanSentenceId, Sentence>> = {
  "message.noMatter": (p) =>
    `The finish does not matter here: all ${fixed(p.number("finishes"), 0)} come within ${inHundred(p.number("points"))}. Leave the surface as it is, or choose for how long it lasts.`,
  "message.noMatterOfHook": (p) =>
    `The finish does not matter here: all ${fixed(p.number("finishes"), 0)} hook within ${boards(p.number("boards"))} of one another. Leave the surface as it is, or choose for how long it lasts.`,
  "message.coverAtLimit.duller": (p) =>
    `This cover is at its limit: ${p.text("finish")} is the dullest it takes, and the chance is still rising towards duller (${inHundred(p.number("points"))} over the last step). Think of a stronger ball.`,
  "message.coverAtLimit.smoother": (p) =>
    `This cover is at its limit: ${p.text("finish")} is the smoothest it takes, and the chance is still rising towards smoother (${inHundred(p.number("points"))} over the last step). Think of a weaker ball.`,
  "message.noLine.hooksTooMuch": (p) =>
    `No sensible line: whatever the finish, this ball turns more than the lane has room for: even from ${line(p)} it comes back past the pocket. A weaker cover, more speed or less axis rotation would help; sanding will not.`,
  "message.noLine.hooksTooLittle": (p) =>
    `No sensible line: whatever the finish, this ball does not turn enough: from ${line(p)} it does not come back to the pocket. A stronger cover, less speed or less oil would help; sanding alone will not.`,
  "message.noLine.limits": (p) =>
    `No line within the limits given: from ${line(p)} the ball comes back past the pocket. Wider limits would find a line; another surface will not.`,
  "message.noLine.tooSlow": () => "No line: with these numbers the ball does not get to the pins. Check speed and oil.",
  "message.noLine.scattered": (p) =>
    `The ball does get to the pocket, at ${degrees(p.number("entryDeg"))}. Shots that all hit the best board at that angle would strike ${fixed(p.number("deadOnPercent"), 0)} times in 100; these scatter too much for that. Steadier shots, or more turn from the hand, would help; another surface will not.`,
  "message.backup": (p) =>
    `A backup ball hooks toward the bowler's own side, so it is planned for the other pocket: everything here is counted from the lane's ${p.text("side")} edge.`,
  "message.slidesThrough": () =>
    "With no finish does this ball start to hook: there is oil all the way, and it slides to the pins. No surface changes that.",
  "message.noTurn": () =>
    "With no finish does this ball hook: the hand gives it no turn. Axis rotation would help; another surface will not.",
  "message.outsideRuleBook": (p) =>
    `The ball's ${quantityWord(p.text("quantity"))} lies outside the limits of the governing body's equipment rules: check the current rule book before it is used in competition.`,
  "message.onlyOne": (p) => `Only ${p.text("finish")} was asked for, so there is nothing to compare it with.`,
  "message.todayIsAsGood": (p) => `Today's ${p.text("today")} is as good as makes no difference: unless it is worn, leave it as it is.`,
  "message.lineAtLimit": (p) =>
    `The best line with ${p.text("finish")}, ${line(p)}, is at the edge of the limits: with more room it might do better.`,
  "message.noMatterOfPins": (p) =>
    `The finish does not matter here: all ${fixed(p.number("finishes"), 0)} bring down the same within ${fixed(p.number("pins"), 2)} pins. Leave the surface as it is, or choose for how long it lasts.`,
  "message.expectedPins": () => "Strikes are too rare here to tell finishes apart, so pins down with the first ball are counted.",
  "message.leastHook": () => "A spare ball: the aim is the least hook, not the most strikes.",
  "message.coverUnknown": (p) => `The cover isn’t known. We tried ${coversText(p.text("covers"))} alike, so the answer is wide.`,
  "message.finishUnknown": (p) =>
    `Today’s finish isn’t known, so nothing is compared with it.${p.number("shots") > 0 ? ` For the oil played away so far we assumed ${p.text("finish")}.` : ""}`,
  "message.rollsEarly": (p) =>
    `With every finish this ball is rolling by ${feet(p.number("feet"))}: it has nothing left for the pins. A weaker ball is the answer here, not another surface.`,
  "message.measure.tenBalls": (p) =>
    `Worth measuring: on which board ten balls arrive on today’s line. It would add about ${inHundred(p.number("points"))} here.`,
  "message.measure.trial": (p) =>
    `Worth measuring: ten balls on one line with the dullest finish, ten with the smoothest. It would add about ${inHundred(p.number("points"))} here.`,
  "message.measure.speeds": (p) =>
    `Worth measuring: speed off the hand and at the pins, ten balls. It would add about ${inHundred(p.number("points"))} here.`,
  "message.houseOtherWorlds": () =>
    "What this house taught was learned with an older set of worlds; only its middle is used here. Learn from its shots again.",
  "message.padReadings": (p) =>
    p.number("readings") === 1
      ? "Weighed by one reading of a ball fresh from your bench."
      : `Weighed by ${fixed(p.number("readings"), 0)} readings of balls fresh from your bench.`,
  "message.trialUnsaid": () =>
    "Hardly any world says the shots of the trial, so the plan is told without them. See whether boards, line, oil and finishes are the right ones before you believe this pick.",
  "message.readingsUnsaid": () =>
    "Hardly any world says what was read on your bench, so the plan is told without it. See whether readings are Ra in µin, of balls fresh from the pad named, before you believe this pick.",
  "message.houseLearned": (p) => `Corrected by ${fixed(p.number("shots"), 0)} shots seen in this house.`,
  "message.leastChange": () => "A control ball: the aim is the least change while the lane changes, not the most strikes on the fresh.",
  "reason.bestChance": (p) =>
    `${p.text("finish")} strikes ${fixed(p.number("chancePercent"), 0)} times in 100 first balls over the session.`,
  "reason.leastHook": (p) => `${p.text("finish")} hooks least: ${boards(p.number("boards"))} in all.`,
  "reason.pinsDown": (p) => `${p.text("finish")} brings down ${fixed(p.number("pins"), 1)} pins with the first ball.`,
  "reason.plateau": (p) => `From ${p.text("from")} to ${p.text("to")} it is too close to call.`,
  "reason.dullLoses": (p) => `At the dull end ${p.text("finish")} loses ${inHundred(p.number("points"))}.`,
  "reason.smoothLoses": (p) => `At the smooth end ${p.text("finish")} loses ${inHundred(p.number("points"))}.`,
  "reason.entryRises": (p) =>
    `Smoother comes in steeper: ${degrees(p.number("dullEntryDeg"))} with ${p.text("dullFinish")}, ${degrees(p.number("smoothEntryDeg"))} with ${p.text("smoothFinish")}.`,
  "reason.entryFalls": (p) =>
    `Smoother comes in flatter here, because the ball is still slipping: ${degrees(p.number("dullEntryDeg"))} with ${p.text("dullFinish")}, ${degrees(p.number("smoothEntryDeg"))} with ${p.text("smoothFinish")}.`,
  "reason.lessForgiving": (p) =>
    `Half a degree off costs ${inHundred(p.number("points"))} with ${p.text("finish")}, ${inHundred(p.number("pickPoints"))} with ${p.text("pickFinish")}.`,
  "reason.slipLeft": (p) =>
    `${p.text("finish")} reaches the pins still slipping at ${metresPerSecond(p.number("slipMps"))}: energy that the pins do not get.`,
  "reason.hookLater": (p) =>
    `Against today's ${p.text("today")}, ${p.text("finish")} starts to hook ${feet(Math.abs(p.number("feet")))} later.`,
  "reason.hookEarlier": (p) =>
    `Against today's ${p.text("today")}, ${p.text("finish")} starts to hook ${feet(Math.abs(p.number("feet")))} earlier.`,
  "reason.todaysLineHigher": (p) =>
    `On today's line ${p.text("finish")} hits ${boards(Math.abs(p.number("boards")))} higher: move to ${line(p)}.`,
  "reason.todaysLineLighter": (p) =>
    `On today's line ${p.text("finish")} hits ${boards(Math.abs(p.number("boards")))} lighter: move to ${line(p)}.`,
  "reason.todayLoses": (p) => `Staying with today's ${p.text("today")} costs ${inHundred(p.number("points"))}.`,
  "why.smootherStillHooks": (p) =>
    `${p.text("pick")} still hooks enough for this bowler here: ${degrees(p.number("entryDeg"))} of entry, and half a degree off costs ${inHundred(p.number("points"))}.`,
  "why.dullerKeepsWindow": (p) =>
    `Half a degree off costs this bowler ${inHundred(p.number("points"))} with ${p.text("smoothFinish")}, ${inHundred(p.number("pickPoints"))} with ${p.text("pick")}.`,
  "why.exitBoard": (p) => `The line that works leaves the oil at board ${fixed(p.number("exitBoard"), 1)}.`,
  "why.ordering": () => "Each finish is compared on its own best line, and the lines differ: on one and the same line the rule holds.",
  "why.plateauReaches": (p) =>
    `${p.text("pick")} is no better than what the rule asks for: the finishes that are too close to call reach into ${p.text("from")} to ${p.text("to")}.`,
  "why.urethane": (p) =>
    `The computation wants ${p.text("pick")} because it takes urethane to grip hard on dry boards; that number is calibrated, not measured. Trust the shop's experience first.`,
};
