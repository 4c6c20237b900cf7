/** English text around the papers. */
export const PRINT = {
  ticket: "Ticket",
  label: "Label",
  visit: "Papers of the visit",
  slip: "Claim slip",
  slipStopped: "not worked on: ask us first",
  leftOn: (day: string) => `Left with us on ${day}`,
  bringSlip: "Bring this slip, or just your name.",
  care: "Care card",
  measures: "Measurement sheet",
  measured: (when: string) => `Measured on ${when}`,
  noMeasures: "Nothing was measured for this ticket.",
  columns: {
    place: "where",
    before: (unit: string) => `before, ${unit}`,
    after: (unit: string) => `after, ${unit}`,
    soFar: (unit: string) => `so far, ${unit}`,
    how: "with",
  },
  several: (mean: string, count: number, low: string, high: string) => `${mean} (${count} read: ${low} to ${high})`,
  workedSince: (count: number) =>
    count === 1
      ? "One reading is left out: its side was worked again since."
      : `${count} readings are left out: their sides were worked again since.`,
  agreement: { before: "Before the work", after: "After the work", soFar: "So far, still in work" },
  eye: "By eye and fingertip: good to about half a grit step.",
  signed: "Measured by",
  toBeDone: "To be done.",
  inWork: (done: number, of: number) => `In work: ${done} of ${of} steps signed.`,
  isDone: "Done: every step is signed.",
  isMeasured: (verdict: string) => `Measured: ${verdict}`,
  notMeasured: "Not measured after the work.",
  back: "Back to the ticket",
  print: "Print",
  cautions: "At the bench",
} as const;
