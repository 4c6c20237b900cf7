import type { StopId } from "#engine/rules/stops";
import type { AbrasiveId } from "#engine/surface/abrasives";
import type { RECIPE_REMARKS } from "#engine/surface/recipe";
import type { StageKind, StagePlan, StageWhy } from "#engine/surface/stages";
import { fixed } from "../figures.ts";
import { numberedNames } from "../numberedNames.ts";
import type { Sentence } from "../params.ts";

/** What the bench says: abrasives, stages, stops, and what is wrong with a recipe. */
export const ABRASIVE_NAMES: Readonly<Record<AbrasiveId, string>> = {
  ...numberedNames(
    (number) => `pad ${number}`,
    (number) => `wet paper ${number}`,
  ),
  "woven-coarse": "coarse woven pad",
  "woven-fine": "fine woven pad",
  compound: "compound",
  "cutting-polish": "polish that cuts",
  "slip-polish": "polish that fills",
};

export const STAGE_NAMES: Readonly<Record<StageKind, string>> = {
  clean: "Clean",
  open: "Open the surface",
  extract: "Draw the oil out",
  dryOff: "Let it dry and cool",
  plug: "Level the plug",
  cut: "Sand",
  polish: "Polish",
  check: "Check all sides",
};

export const STAGE_REASONS: Readonly<Record<StageWhy, string>> = {
  before: "dirt would be sanded in",
  oil: "oil in the cover",
  openPores: "so that the oil comes out",
  heat: "no warm ball on the spinner",
  plugFlush: "the plug stands proud",
  deepWear: "takes the worn track down",
  scratches: "takes the deep scratches down",
  unknownBefore: "nobody knows what is on it, so it is cut back first",
  establish: "one texture all round",
  removeLast: "clears the last stage",
  polishOver: "over the base",
  prove: "readings or reference ball",
};

export const STOP_SENTENCES: Readonly<Record<StopId, string>> = {
  crack: "Stop: it is cracked. No spinner, no heat. Photograph it and ask about the warranty first.",
  hollowSound: "Stop: it sounds hollow; the core may be loose. No spinner, no heat. Photograph it and ask about the warranty first.",
  claimOpen: "Stop: a claim may be open. Work on the surface may end it; ask the maker first.",
  coldBall: "Not yet: let the cold ball warm to the room.",
  serialNotPhotographed: "Not yet: photograph the serial number before it can be sanded away.",
  insertsNotMasked: "Not yet: take out or mask the inserts before water or heat; afterwards dry the holes and look at the bevels.",
};

export const RECIPE_SENTENCES: Readonly<Record<(typeof RECIPE_REMARKS)[number], Sentence>> = {
  "recipe.paperDry": (p) => `Stage ${fixed(p.number("stage"), 0)}: wet paper dry ruins the ball; plenty of water.`,
  "recipe.paperOnResin": (p) => `Stage ${fixed(p.number("stage"), 0)}: wet paper eats resin; keep it for plug work and deep resurfacing.`,
  "recipe.step": (p) =>
    `Stage ${fixed(p.number("stage"), 0)}: the grain is ${fixed(p.number("ratio"), 1)} times finer than the last; about twice is what a step can clear.`,
  "recipe.backwards": (p) => `Stage ${fixed(p.number("stage"), 0)}: goes back to a coarser grain, so the stage before was for nothing.`,
  "recipe.tooShort": (p) =>
    `Stage ${fixed(p.number("stage"), 0)}: takes off about ${fixed(p.number("removedUm"), 1)} µm where ${fixed(p.number("neededUm"), 1)} were left; about ${fixed(p.number("seconds"), 0)} s a side would do.`,
  "recipe.sides": (p) =>
    `Stage ${fixed(p.number("stage"), 0)}: ${fixed(p.number("sides"), 0)} sides leave bands; six cover the ball evenly.`,
  "recipe.endsElsewhere": (p) =>
    `It ends at about ${fixed(p.number("raUm"), 2)} µm effective; ${p.text("wanted")} is ${fixed(p.number("wantedUm"), 2)} µm.`,
  "recipe.never": (p) =>
    `${fixed(p.number("number"), 0)} is never a final finish on this cover; ${fixed(p.number("least"), 0)} is the least.`,
  "recipe.good": () => "Nothing to find fault with.",
};

export const WHAT_ENDS: Readonly<Record<StagePlan["ends"][number]["what"], string>> = {
  diameter: "before the ball is below the smallest diameter",
  serial: "before the serial number is gone",
};

export const KNOWN_FROM: Readonly<Record<StagePlan["now"]["from"], string>> = {
  reading: "by the reading",
  comparison: "by eye and touch against the reference ball",
  games: "estimated from the games on it",
  nothing: "nobody knows what is on it: a wide guess",
};

export const RESTATED = {
  now: "Track now",
  sides: "Sides, in this order",
  after: "Expected after",
  removed: "Taken off",
  bench: "At the spinner",
  ends: "The same work can be done",
  recipe: "The recipe given",
  batch: "In one go",
  ownCut: "This technician's cut over the usual one, by the readings",
  ruleBook: "These figures are estimates with wide ranges: measure after the work, and look at the reference ball.",
} as const;
