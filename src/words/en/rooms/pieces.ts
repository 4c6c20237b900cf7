/** English text of forms over things that are kept already. */
export const EDITING = {
  change: "Change",
  keep: "Keep",
  leave: "Leave as it was",
  empty: "empty",
  quicker: "Somebody else changed this meanwhile. Nothing is lost: here are both.",
  mine: "what you typed",
  theirs: "what is kept now",
  keepMine: "Keep what I typed",
  keepTheirs: "Leave what is kept",
} as const;

export const TABLE = {
  showAll: (count: number) => `Show all ${count}`,
  csv: "Save as CSV",
  asCsv: "As CSV",
} as const;

export const CHART_FILES = {
  svg: "As SVG",
  png: "As PNG",
} as const;
