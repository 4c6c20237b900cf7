import { fixed } from "../../figures.ts";

/** English text of files that a tester wrote. */
export const PROFILE_FILES = {
  title: "Profile files",
  what: "CSV or text with two columns, X3P (ISO 25178-72), SMD (ISO 5436-2)",
  choose: "Open a tester's file",
  form: "Curve taken out",
  forms: { arc: "the ball's own curve", line: "a slope", none: "nothing" },
  cutoff: "Cut-off",
  cutoffUsual: "by the standard's table",
  mm: (value: number) => `${fixed(value, 2)} mm`,
  working: "Being read …",
  broken: (why: string) => `It could not be read: ${why}`,
  place: "Where it was taken",
  track: "track",
  keep: "Keep file and reading with the ball",
  keepFile: "Keep the file with the ball",
  keeping: "Being kept …",
  kept: (name: string) => `${name} is kept with the ball.`,
  known: "Files of this ball",
  none: "No file is kept with this ball yet.",
  save: (name: string) => `Save ${name}`,
  lengths: "mm",
  heights: "µm",
} as const;
