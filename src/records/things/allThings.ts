import type { Things } from "../records.ts";
import type { Session } from "../session.ts";
import { photos, profileFiles } from "./attachments.ts";
import { audit } from "./audit.ts";
import { balls } from "./balls.ts";
import { bowlers } from "./bowlers.ts";
import { paymentKind, prepaidKind } from "./payments.ts";
import { houses, lanes, patterns, people, prices, readings, referenceBalls, shotNotes } from "./plainKinds.ts";
import { settings } from "./settings.ts";
import { stageKind } from "./stagesDone.ts";
import { movementKind, stockItems } from "./stock.ts";
import { store } from "./store.ts";
import { tickets } from "./tickets.ts";
import { visits } from "./visits.ts";

/** Everything kept, over one database or one transaction. */
export function allThings(session: Session): Things {
  return {
    people: store(session, people),
    bowlers: store(session, bowlers),
    balls: store(session, balls),
    visits: visits(session),
    tickets: tickets(session),
    stagesDone: store(session, stageKind),
    readings: store(session, readings),
    photos: photos(session),
    profileFiles: profileFiles(session),
    houses: store(session, houses),
    lanes: store(session, lanes),
    patterns: store(session, patterns),
    shotNotes: store(session, shotNotes),
    referenceBalls: store(session, referenceBalls),
    stockItems: stockItems(session),
    stockMovements: store(session, movementKind),
    prices: store(session, prices),
    payments: store(session, paymentKind),
    prepaid: store(session, prepaidKind),
    settings: settings(session),
    audit: audit(session),
  };
}
