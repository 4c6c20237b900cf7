import type * as en from "../../en/rooms/today.ts";
import type { Translated } from "../../translated.ts";

export const TODAY = {
  title: "Heute",
  backupFailed: "Die letzte Sicherung ist misslungen.",
  lostFiles: (count) =>
    count === 1
      ? "1 Foto oder Datei der Aufzeichnungen ist verloren, und die letzte Sicherung hat sie nicht."
      : `${count} Fotos und Dateien der Aufzeichnungen sind verloren, und die letzte Sicherung hat sie nicht.`,
  unreadable: (count) =>
    count === 1
      ? "1 Eintrag der Aufzeichnungen ist nicht lesbar und wurde beiseite gelegt; er fehlt in Listen und Summen."
      : `${count} Einträge der Aufzeichnungen sind nicht lesbar und wurden beiseite gelegt; sie fehlen in Listen und Summen.`,
  shopSaysWhy: "Der Raum Werkstatt sagt, warum",
  tellOwner: "Sagen Sie es einem Inhaber.",
  takeIn: "Ball annehmen",
  queue: "An der Werkbank, nach Zusage",
  emptyQueue: "Kein Ball wartet. Nehmen Sie einen an, dann steht er hier.",
  ready: "Fertig zum Abholen",
  noneReady: "Nichts ist fertig.",
  batches: "Gemeinsam bearbeiten",
  batchesWhy: "Bälle, deren nächste Stufe dieselbe ist: ein Pad, dann das nächste.",
  batch: (stage, balls) => `${stage}: ${balls} Bälle`,
  low: "Geht zur Neige",
  nothingLow: "Alles ist vorrätig.",
  left: (quantity, unit, reorderAt) => `noch ${quantity} ${unit}, nachbestellen bei ${reorderAt}`,
  promised: (when) => `bis ${when}`,
  late: "überfällig",
  noPromise: "keine Zusage",
  unknownOwner: "gehört niemandem",
  tickets: (count) => (count === 1 ? "1 Ball" : `${count} Bälle`),
} as const satisfies Translated<typeof en.TODAY>;

export const TICKET_STATE_WORDS = {
  received: "angenommen",
  "waiting for approval": "wartet auf Zustimmung",
  "in work": "in Arbeit",
  drying: "trocknet",
  ready: "fertig",
  collected: "abgeholt",
  uncollected: "nicht abgeholt",
  rework: "Nacharbeit",
  "warranty hold": "wegen Garantie angehalten",
  cancelled: "abgebrochen",
} as const satisfies Translated<typeof en.TICKET_STATE_WORDS>;
