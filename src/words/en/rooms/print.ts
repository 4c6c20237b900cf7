/** English text around the papers. */
export const PRINT = {
  ticket: "Ticket",
  label: "Label",
  care: "Care card",
  back: "Back to the ticket",
  print: "Print",
  cautions: "At the bench",
} as const;
