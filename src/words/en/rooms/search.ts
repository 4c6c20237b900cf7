/** English text of the search that opens anywhere. */
export const SEARCH = {
  open: "Search",
  openKey: "Search ( / )",
  title: "Search the shop",
  words: "Name, serial number or telephone",
  help: "Balls, bowlers and tickets that are open. Esc closes.",
  none: "Nothing of that name or number.",
  balls: "Balls",
  bowlers: "Bowlers",
  tickets: "Tickets",
  close: "Close",
} as const;
