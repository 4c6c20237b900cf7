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
  /** Primary key, in the order of its index. */
  readonly key: readonly string[];
  /** Column that refers to the same table. */
  readonly refersToItself?: string;
  /** Whether a backup, a restore and a move take its rows along; files and the ledger of erasures go their own ways. */
  readonly isCarried: boolean;
}

function of(belongsTo: TableRule["belongsTo"], more: Partial<TableRule> = {}): TableRule {
  return { belongsTo, key: ["id"], isCarried: true, ...more };
}

/** Every table there is: the compiler wants a rule for a new one. A table that refers to another stands behind it. */
export const TABLE_RULES: Readonly<Record<keyof Tables, TableRule>> = {
  settings: of("the shop"),
  people: of("the shop"),
  bowlers: of("all shops"),
  balls: of("all shops"),
  visits: of("the shop"),
  tickets: of("the shop", { refersToItself: "reworkOf" }),
  stagesDone: of("the shop"),
  referenceBalls: of("the shop"),
  profileFiles: of("the shop"),
  readings: of("the shop"),
  photos: of("all shops with its ball"),
  houses: of("the shop"),
  lanes: of("the shop"),
  patterns: of("the shop"),
  shotNotes: of("the shop"),
  stockItems: of("the shop"),
  stockMovements: of("the shop"),
  prices: of("the shop"),
  payments: of("the shop", { refersToItself: "refundOf" }),
  prepaid: of("the shop"),
  audit: of("the shop"),
  once: of("the shop", { key: ["shopId", "person", "key"] }),
  terms: of("all shops", { key: ["shopId", "term", "kind", "thingId"] }),
  imports: of("the shop"),
  accounts: of("the shop", { key: ["personId"] }),
  // Nobody goes on elsewhere, or after a restore, with a session of before.
  sessions: of("the shop", { isCarried: false }),
  tries: of("the shop", { key: ["shopId", "about"], isCarried: false }),
  files: of("no shop", { key: ["name"], isCarried: false }),
  erasures: of("no shop", { key: ["bowlerId"], isCarried: false }),
  moves: of("no shop", { isCarried: false }),
  writers: of("no shop", { key: ["name"] }),
  schemaSteps: of("no shop", { key: ["name"], isCarried: false }),
};
