/** English text of what surrounds every room that works with the shop's records. */
export const SHOP_FRAME = {
  rooms: "Rooms",
  today: "Today",
  intake: "Take in",
  laneSide: "Lane side",
  lanes: "Lanes",
  measure: "Measure",
  plan: "Finish plan",
  stock: "Stock",
  money: "Money",
  shop: "Shop",
  design: "Pieces",
  whoActs: "At work",
  nobody: "nobody yet",
  inventedName: "Invented shop",
  invented: "Invented shop: every person, ball and place in it is made up.",
  away: "The shop's server does not answer. What you see was read before; what you write is not kept yet.",
  tryAgain: "Try again",
  reading: "Reading …",
  nothingHere: "Nothing here yet.",
  failedToRead: (what: string) => `This could not be read: ${what}`,
  changedMeanwhile: "Somebody else changed this meanwhile. Below is how it is now; what you typed is still here.",
  refused: (what: string, why: string) => `The shop did not take “${what}”: ${why}`,
  stillToSend: "Not with the shop yet",
  dealtWith: "I have dealt with it",
  undo: "Undo",
  saved: "Kept.",
} as const;

/** Finding a ball, wherever one is wanted. */
export const FIND_BALL = {
  find: "Serial number, name or telephone",
  help: "The end of a number is enough.",
  none: "No ball of that name or number.",
} as const;

/** Days and times as the shop's zone and the reader's language have them. */
export const LANGUAGE = "en-GB";
