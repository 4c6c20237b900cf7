/** A cover and a number that nobody makes, unlike every other in each field, so that an answer shows whose record it is from. */
export const COVER_ID = "madeup";
export const COVER_RECORD = `  ${COVER_ID}: {
    reactive: false,
    strikes: true,
    laws: {
      dryFriction: "friction.dry.urethane",
      filmReach: "filmReach.pearl",
      carriedOil: "carriedOil.polyester",
      laidDown: "wear.laidDown.urethane",
      fadeLevel: "fade.level.urethane",
      fadeGames: "fade.games.polyester",
    },
    usual: [...plain(800, 1500, 6000), polished(6000)],
    neverBelow: 800,
    deepCutTo: 800,
    wetPaper: "first",
    opensForOil: false,
    hardnessD: 91,
    differentialIn: [0.02, 0.02],
    rules: ["urethaneRange", "weakHookDull"],
  },
`;

export const NUMBER = 6000;
export const PAD_RECORD = `  { ...FOAM, number: ${NUMBER}, raUm: 0.15, grainUm: 3.5, usesBeforeWorn: 33, source: "made up" },
`;

/** The only words that are wanted: what the cover is called. A number is said as every other. */
export const WORDS = { en: "made-up cover", de: "erfundene Schale" } as const;
export const WORD_FILES = { en: "src/words/en/screens.ts", de: "src/words/de/screens.ts" } as const;
