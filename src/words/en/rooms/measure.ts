/** English text of measuring: sheen against a reference ball, or a tester; per side, before and after. */
export const MEASURE = {
  when: { before: "before", after: "after", between: "between visits" },
  how: {
    tester: "tester",
    "reference ball": "reference ball",
    durometer: "durometer",
    scale: "scale",
    calliper: "calliper",
  },
} as const;
