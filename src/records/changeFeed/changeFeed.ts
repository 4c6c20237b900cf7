import type { ThingKind } from "#contract/records/auditEntry";
import { TABLE_RULES } from "../database/tableRules.ts";
import type { Db } from "../database/tables.ts";

/** What has been written; without an id anything of the kind may have been. */
export interface Written {
  readonly kind: ThingKind;
  readonly id: string | null;
}

/** What has been written, and in whose shop: where it belongs to all, in that of who did it. */
export interface Noted extends Written {
  readonly shopId: string;
}

export type Watcher = (written: Written) => void;

/** How pages that watch learn of what was written, by this server or by another one of the same database. */
export interface ChangeFeed {
  /** In the write's own transaction: says it to other servers, who hear it when it has been kept. */
  announce(inside: Db, noted: readonly Noted[]): Promise<void>;
  /** After the write: says it to those who watch here. */
  tell(written: readonly Written[]): void;
  watch(watcher: Watcher): () => void;
  /** From now on also tells what other servers write that this shop sees. */
  hear(shopId: string): void;
  close(): Promise<void>;
}

/** What of it a shop sees. */
export function seenBy(shopId: string | null, noted: readonly Noted[]): Written[] {
  return noted
    .filter((one) => one.shopId === shopId || TABLE_RULES[one.kind].belongsTo !== "the shop")
    .map(({ kind, id }) => ({ kind, id }));
}

/** Within this program alone. */
export function changeFeedHere(): ChangeFeed {
  const watchers = new Set<Watcher>();
  return {
    announce: async () => {},
    tell(written) {
      for (const one of written) for (const watcher of watchers) watcher(one);
    },
    watch(watcher) {
      watchers.add(watcher);
      return () => {
        watchers.delete(watcher);
      };
    },
    hear() {},
    close: async () => {},
  };
}
