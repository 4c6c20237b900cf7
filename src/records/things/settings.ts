import { type Settings, settingsKept, settingsWritten } from "#contract/records/settings";
import type { Things } from "../records.ts";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { store } from "./store.ts";

export const settingsKind: Definition<Settings> = { kind: "settings", written: settingsWritten, kept: settingsKept, lookups: {} };

export function settings(session: Session): Things["settings"] {
  const stored = store(session, settingsKind);
  return { get: () => stored.get(session.shopId), change: (fields, write) => stored.change(session.shopId, fields, write) };
}
