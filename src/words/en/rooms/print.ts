/** English text around the papers. */
export const PRINT = {
  ticket: "Ticket",
  label: "Label",
  care: "Care card",
  measures: "Measurement sheet",
  measured: (when: string) => `Measured on ${when}`,
  noMeasures: "Nothing was measured for this ticket.",
  columns: {
    place: "where",
    before: (unit: string) => `before, ${unit}`,
    after: (unit: string) => `after, ${unit}`,
    how: "with",
  },
  several: (mean: string, count: number, low: string, high: string) => `${mean} (${count} read: ${low} to ${high})`,
  agreement: { before: "Before the work", after: "After the work" },
  eye: "By eye and fingertip: good to about half a grit step.",
  signed: "Measured by",
  back: "Back to the ticket",
  print: "Print",
  cautions: "At the bench",
} as const;
