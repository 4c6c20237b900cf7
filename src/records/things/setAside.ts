import type { ThingKind } from "#contract/records/auditEntry";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import type { ThingRow } from "../database/tables.ts";
import type { Session, SetAside, SetAsideNotes } from "../session.ts";
import type { Definition } from "./definition.ts";
import { readRow, rescued } from "./rows.ts";

/** Beyond so many there is one thing wrong with all of them. */
const MOST_NOTED = 1000;

export function setAsideNotes(): SetAsideNotes {
  const noted = new Map<string, SetAside>();
  const keyOf = (kind: ThingKind, id: string) => `${kind} ${id}`;
  return {
    note(found) {
      if (noted.size < MOST_NOTED) noted.set(keyOf(found.kind, found.id), found);
    },
    forget: (kind, id) => void noted.delete(keyOf(kind, id)),
    only(kind, ids) {
      for (const one of noted.values()) if (one.kind === kind && !ids.has(one.id)) noted.delete(keyOf(kind, one.id));
    },
    all: () => [...noted.values()],
  };
}

/** Those of the rows that can be read; the others are set aside. Inside a write all must be readable: a sum that leaves one out would be wrong. */
export function readable<Thing extends Kept>({ setAside }: Session, definition: Definition<Thing>, rows: readonly ThingRow[]): Thing[] {
  return rows.flatMap((row) => {
    try {
      const { thing } = readRow(definition, row);
      setAside?.forget(definition.kind, row.id);
      return [thing];
    } catch (fault) {
      if (setAside === null || !isUnreadable(fault)) throw fault;
      setAside.note({ kind: definition.kind, id: row.id, problems: fault.problems });
      return rescued(definition, row) ?? [];
    }
  });
}

export function isUnreadable(fault: unknown): fault is RecordsFault {
  return fault instanceof RecordsFault && fault.kind === "unreadable";
}
