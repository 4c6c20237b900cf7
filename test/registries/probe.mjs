// Runs in the copy, on what was built there, and prints what the program says of the planted cover and number.

import { bagFileSchema } from "#contract/bagFile";
import { benchFileSchema } from "#contract/bench/benchFile";
import { checkFile } from "#contract/job/checkJob";
import { jobFileSchema } from "#contract/job/jobFile";
import { careFan } from "#drawing/careFan";
import { stippleOf, textureSwatch } from "#drawing/texture";
import { assume } from "#engine/assumptions";
import { coversOf, knownCover } from "#engine/ball/ball";
import { contactOf, filmMet } from "#engine/contact/friction";
import { filmOfPattern } from "#engine/lane/film";
import { wearLaw } from "#engine/lane/wear";
import { referenceStates } from "#engine/planning/bag/references";
import { planAssumptions } from "#engine/planning/planAssumptions";
import { cautionsFor } from "#engine/rules/cautions";
import { RULE_IDS, RULES_OF_THUMB } from "#engine/rules/rulesOfThumb";
import { NO_FINDINGS } from "#engine/rules/stops";
import { ABRASIVES } from "#engine/surface/abrasives";
import { hardnessOf } from "#engine/surface/benchBall";
import { careOf } from "#engine/surface/care";
import { fadeLaw } from "#engine/surface/fade";
import { COUNTER_FINISHES, effectiveRaUm, parseFinish } from "#engine/surface/finish";
import { leftBy } from "#engine/surface/history";
import { checkRecipe } from "#engine/surface/recipe";
import { ladder, planStages, USUAL_HABITS } from "#engine/surface/stages";
import { coverWord } from "#words/coverWord";
import { ABRASIVE_NAMES as ABRASIVE_NAMES_DE } from "#words/de/bench";
import { COVER_WORDS as COVER_WORDS_DE } from "#words/de/screens";
import { ABRASIVE_NAMES } from "#words/en/bench";

const [cover, number] = [process.argv[2], Number(process.argv[3])];
const a = assume();
const film = filmOfPattern({ kind: "named", id: "medium-41" });
const bench = {
  ...{ cover, hardnessD: null, diameterIn: 8.55, finish: parseFinish("2000"), history: [], gamesSince: 0 },
  ...{ raMicroinch: null, compared: null, trackWear: "none", plug: "none", oil: "clean" },
};
/** What the stages use, or what kind they are where they use nothing. */
const stages = (change, wanted, habits = USUAL_HABITS) =>
  planStages({ ...bench, ...change }, parseFinish(wanted), NO_FINDINGS, habits).stages.map(({ kind, abrasive }) => abrasive ?? kind);
const recipe = (abrasive, wanted) => {
  const stage = { abrasive: ABRASIVES[abrasive], wet: true, by: "spinner", sides: 6, secondsPerSide: 90, force: "hard", spinnerRpm: 400 };
  return checkRecipe(bench, parseFinish(wanted), [stage]).remarks.map(({ id, params }) => ({ id, ...params }));
};
/** What is wrong with a file, or with a question to the engine; empty: nothing. */
const problems = (ask) => {
  try {
    ask();
    return [];
  } catch (fault) {
    return fault.problems.map(({ path, value, allowed }) => `${path}: ${value}, allowed: ${allowed}`);
  }
};
const bagOf = (numbers) => ({
  gritwright: 1,
  balls: [{ ball: { cover } }],
  lane: { pattern: "medium-41" },
  session: { games: 2 },
  work: { numbers },
});
const shopsOwn = (n) => ({
  gritwright: 1,
  balls: [
    {
      ball: { cover },
      wanted: `${number}`,
      recipe: [{ abrasive: { kind: "foamPad", system: "jis", number: n }, wet: true, secondsPerSide: 30 }],
    },
  ],
});
const course = {
  hookStartFt: 30,
  rollStartFt: 50,
  points: [
    [0, 10],
    [60, 15],
  ],
};
const rule = { job: "strike", speedClass: "speedDominant", speedMph: 17, oil: "medium", playedShots: 0, lengthFt: 41 };

const said = {
  laws: {
    contact: contactOf(cover, 0.5, a),
    likeUrethane: contactOf("urethane", 0.5, a),
    likePearl: contactOf("pearl", 0.5, a),
    carriesLikePolyester: filmMet(film, cover, a).every((um, i) => um === filmMet(film, "polyester", a)[i]),
    laidDown: wearLaw(cover, 0.5, a).laidDown - wearLaw("urethane", 0.5, a).laidDown,
    fade: fadeLaw(cover, a),
    care: careOf({
      cover,
      startUm: 0.7,
      gamesSince: 9,
      gamesSinceExtraction: 99,
      gamesSinceResurfacing: 99,
      abrasiveness: 1,
      readings: [],
    }),
    hardness: hardnessOf({ hardnessD: null, cover }),
    assumptions: planAssumptions(cover),
    unknown: coversOf({ cover: "hybrid", unknown: ["cover"], job: "strike" }),
    known: knownCover({ cover }),
    gaps: [...new Set(referenceStates({ balls: [] }).map(({ as }) => as.cover))],
  },
  rules: {
    speak: RULE_IDS.filter((id) => RULES_OF_THUMB[id].applies({ ...rule, cover })),
    cautions: cautionsFor({ cover, number: 800, polished: false, extracts: false, readingMicroinch: null }),
    paper: recipe("paper-P800", "800"),
    tooDull: recipe("pad-500", "500"),
    deepWear: stages({ trackWear: "deep" }, "1000"),
    soaked: stages({ oil: "soaked" }, "1000", { ...USUAL_HABITS, oilOrder: "openFirst" }),
  },
  number: {
    raUm: effectiveRaUm(parseFinish(String(number))),
    beyond: [problems(() => parseFinish("7000")), problems(() => effectiveRaUm({ number: 7000, polished: false }))],
    grainUm: ABRASIVES[`pad-${number}`].grainUm,
    wornUm: leftBy({ abrasive: ABRASIVES["pad-5000"], usesBefore: 1000 }, 0.3, a),
    ladder: ladder(3000, number),
    stages: stages({ cover: "pearl" }, `${number} + polish`),
    counter: COUNTER_FINISHES.filter((finish) => finish.startsWith(String(number))),
    stipple: [
      stippleOf(effectiveRaUm(parseFinish(String(number))), false).radius,
      stippleOf(effectiveRaUm(parseFinish("5000")), false).radius,
    ],
    swatch: textureSwatch("s", parseFinish(String(number)), 30),
    fan: careFan({ hand: "right", from: "2000", to: `${number} + polish`, oilFt: 40, was: course, now: course, nowName: "" }),
  },
  files: {
    job: problems(() => checkFile(jobFileSchema, { gritwright: 1, ball: { cover, finish: number }, lane: { pattern: "medium-41" } })),
    otherCover: problems(() => checkFile(jobFileSchema, { gritwright: 1, ball: { cover: "sponge" }, lane: { pattern: "medium-41" } })),
    bag: problems(() => checkFile(bagFileSchema, bagOf([number]))),
    otherNumber: problems(() => checkFile(bagFileSchema, bagOf([7000]))),
    ownNumber: problems(() => checkFile(benchFileSchema, shopsOwn(number))),
    ownBeyond: problems(() => checkFile(benchFileSchema, shopsOwn(8000))),
  },
  words: {
    en: [coverWord(cover), ABRASIVE_NAMES[`pad-${number}`]],
    de: [COVER_WORDS_DE[cover], ABRASIVE_NAMES_DE[`pad-${number}`]],
  },
};
process.stdout.write(JSON.stringify(said));
