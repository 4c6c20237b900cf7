import type { Tables } from "./tables.ts";

/** A table's rules, for whatever goes through all tables: whose its rows are, and how they are carried to another database. */
export interface TableRule {
  /**
   * - `the shop`: seen and written by the shop whose id the row bears.
   * - `all shops`: seen and changed by every shop of the database; a new row bears the id of the shop that made it.
   * - `all shops with its ball`: of a ball, it is seen by every shop; written only by its own.
   * - `no shop`: nothing a shop's own work reaches.
   */
  readonly belongsTo: "the shop" | "all shops" | "all shops with its ball" | "no shop";
  /**
   * How a bowler may stand in it, when one is erased:
   * - `as its own`: it is a bowler's row.
   * - `in words`: somebody wrote freely in it, and is looked for there.
   * - `behind it`: what it holds was made of such words or pictures, and goes with them.
   * - `no`: it holds none of that.
   */
  readonly bowlerStands: "as its own" | "in words" | "behind it" | "no";
  /** Primary key, in the order of its index. */
  readonly key: readonly string[];
  /** Column that refers to the same table. */
  readonly refersToItself?: string;
  /** Whether a backup, a restore and a move take its rows along; files and the ledger of erasures go their own ways. */
  readonly isMoved: boolean;
}

function of(
  belongsTo: TableRule["belongsTo"],
  bowlerStands: TableRule["bowlerStands"],
  more: Partial<Pick<TableRule, "key" | "refersToItself" | "isMoved">> = {},
): TableRule {
  return { belongsTo, bowlerStands, key: ["id"], isMoved: true, ...more };
}

/** Every table there is: the compiler wants a rule for a new one. A table that refers to another stands behind it. */
export const TABLE_RULES: Readonly<Record<keyof Tables, TableRule>> = {
  settings: of("the shop", "no"),
  people: of("the shop", "no"),
  bowlers: of("all shops", "as its own"),
  balls: of("all shops", "in words"),
  visits: of("the shop", "in words"),
  tickets: of("the shop", "in words", { refersToItself: "reworkOf" }),
  stagesDone: of("the shop", "in words"),
  referenceBalls: of("the shop", "in words"),
  profileFiles: of("the shop", "in words"),
  readings: of("the shop", "in words"),
  photos: of("all shops with its ball", "in words"),
  houses: of("the shop", "in words"),
  lanes: of("the shop", "in words"),
  patterns: of("the shop", "in words"),
  shotNotes: of("the shop", "in words"),
  stockItems: of("the shop", "in words"),
  stockMovements: of("the shop", "in words"),
  prices: of("the shop", "in words"),
  payments: of("the shop", "in words", { refersToItself: "refundOf" }),
  prepaid: of("the shop", "in words"),
  audit: of("the shop", "no"),
  once: of("the shop", "behind it", { key: ["shopId", "person", "key"] }),
  terms: of("all shops", "behind it", { key: ["shopId", "term", "kind", "thingId"] }),
  imports: of("the shop", "no"),
  accounts: of("the shop", "no", { key: ["personId"] }),
  // Nobody goes on elsewhere, or after a restore, with a session of before.
  sessions: of("the shop", "no", { isMoved: false }),
  tries: of("the shop", "no", { key: ["shopId", "about"], isMoved: false }),
  files: of("no shop", "behind it", { key: ["name"], isMoved: false }),
  erasures: of("no shop", "no", { key: ["bowlerId"], isMoved: false }),
  moves: of("no shop", "no", { isMoved: false }),
  writers: of("no shop", "no", { key: ["name"] }),
  schemaSteps: of("no shop", "no", { key: ["name"], isMoved: false }),
};
