/** English text of the room that opens the shop. */
export const TODAY = {
  title: "Today",
  backupFailed: "The last backup failed.",
  lostFiles: (count: number) =>
    count === 1
      ? "1 photo or file of the records is lost, and the last backup does not have it."
      : `${count} photos and files of the records are lost, and the last backup does not have them.`,
  unreadable: (count: number) =>
    count === 1
      ? "1 entry of the records cannot be read and was set aside; lists and sums are without it."
      : `${count} entries of the records cannot be read and were set aside; lists and sums are without them.`,
  shopSaysWhy: "The room Shop says why",
  tellOwner: "Tell an owner.",
  takeIn: "Check in a ball",
  queue: "On the bench, by promise",
  emptyQueue: "No ball waits. Take one in and it stands here.",
  ready: "Ready to be fetched",
  noneReady: "Nothing is ready.",
  batches: "Work together",
  batchesWhy: "Balls whose next stage is the same: one pad, then the next.",
  batch: (stage: string, balls: number) => `${stage}: ${balls} balls`,
  low: "Runs low",
  nothingLow: "Everything is in stock.",
  left: (quantity: number, unit: string, reorderAt: number) => `${quantity} ${unit} left, reorder at ${reorderAt}`,
  promised: (when: string) => `for ${when}`,
  late: "late",
  noPromise: "no promise",
  unknownOwner: "nobody's",
  tickets: (count: number) => (count === 1 ? "1 ball" : `${count} balls`),
} as const;

/** What a ticket's state is called on the screen; the page does not compile where one is missing. */
export const TICKET_STATE_WORDS = {
  received: "received",
  "waiting for approval": "waiting for approval",
  "in work": "in work",
  drying: "drying",
  ready: "ready",
  collected: "collected",
  uncollected: "not collected",
  rework: "rework",
  "warranty hold": "held for warranty",
  cancelled: "cancelled",
} as const;
