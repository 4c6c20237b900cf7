import type { ThingKind } from "#contract/records/auditEntry";
import type { Kept } from "#contract/records/fields";
import { photoKind, profileFileKind } from "./attachments.ts";
import { balls } from "./balls.ts";
import { bowlers } from "./bowlers.ts";
import type { Definition } from "./definition.ts";
import { paymentKind, prepaidKind } from "./payments.ts";
import { houses, lanes, patterns, people, prices, readings, referenceBalls, shotNotes, visits } from "./plainKinds.ts";
import { settingsKind } from "./settings.ts";
import { stageKind } from "./stagesDone.ts";
import { itemKind, movementKind } from "./stock.ts";
import { ticketKind } from "./ticketKind.ts";

const EACH = {
  people,
  bowlers,
  balls,
  visits,
  tickets: ticketKind,
  stagesDone: stageKind,
  readings,
  photos: photoKind,
  profileFiles: profileFileKind,
  houses,
  lanes,
  patterns,
  shotNotes,
  referenceBalls,
  stockItems: itemKind,
  stockMovements: movementKind,
  prices,
  payments: paymentKind,
  prepaid: prepaidKind,
  settings: settingsKind,
} satisfies Readonly<Record<ThingKind, unknown>>;

/** What each kind is, for whoever goes through all of them; the compiler asks for a new one. What else a kind has does not matter there. */
export const KINDS = EACH as unknown as Readonly<Record<ThingKind, Definition<Kept>>>;
