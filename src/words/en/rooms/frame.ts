/** English text of what surrounds every room that works with the shop's records. */
export const SHOP_FRAME = {
  rooms: "Rooms",
  today: "Today",
  intake: "Check in",
  laneSide: "Lane side",
  lanes: "Lanes",
  measure: "Measure",
  plan: "Finish plan",
  stock: "Stock",
  money: "Money",
  shop: "Shop",
  whoActs: "At work",
  nobody: "nobody yet",
  inventedName: "Invented shop",
  invented: "Invented shop: every person, ball and place in it is made up.",
  away: "The shop's server does not answer. What you see was read before; what you write is not kept yet.",
  serverAway:
    "The shop's server does not answer. Work goes on: what you sign, note and decide here waits in this browser and is sent when the server is back.",
  onlyReading:
    "A newer version of the program has been at these records. This one only reads them, so that it spoils nothing: start the newer version.",
  serverBack: "The shop's server answers again; what you see has been read anew.",
  readAt: (when: string) => `What you see was read ${when} or later.`,
  plainAddressName: "What is missing at this address",
  plainAddress:
    "This address is neither this machine itself nor encrypted, so the browser forbids some things here: the page cannot be installed or opened while the server is away, and the screen cannot be kept awake at the bench. Open it on the shop's own machine, or over a secure address. What you write is kept until it is sent, here too.",
  understood: "Understood",
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

/** What waits to be sent, and what came between. */
export const WAITING = {
  ticketChange: "change of a ticket",
  ticketMove: (state: string) => `ticket moved on to: ${state}`,
  conflict: (what: string) => `Somebody else changed it while this waited: ${what}. Nothing is lost; which of the two is to stand?`,
  both: (field: string, mine: string, theirs: string) => `${field}: written here ${mine}; in the shop ${theirs}`,
  nothing: "nothing",
  sendMine: "Send mine all the same",
  leaveTheirs: "Leave what the shop has",
  notKept: "This browser keeps nothing of it: leave the page open until it is sent.",
} as const;

/** Finding a ball, wherever one is wanted. */
export const FIND_BALL = {
  find: "Serial number, name or telephone",
  help: "The end of a number is enough.",
  none: "No ball of that name or number.",
} as const;
