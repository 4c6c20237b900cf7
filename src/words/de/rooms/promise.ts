import type * as en from "../../en/rooms/promise.ts";
import type { Translated } from "../../translated.ts";

export const PROMISE = {
  usualHours: "Die Öffnungszeiten sind die üblichen, Montag bis Samstag 10 bis 19; unter Werkstatt stehen Ihre.",
  other: "Andere Zeit zusagen",
  asReckoned: "Wie berechnet",
  when: "Zugesagt bis, nach der Uhr der Werkstatt",
  why: "Warum",
  past: "Diese Zeit ist vorbei.",
  shut: "Dann ist die Werkstatt geschlossen.",
  needsWhy: "Sagen Sie, warum eine andere Zeit zugesagt wird.",
  was: (when, why) => `${when}: ${why}`,
  keep: "Zusagen",
  leave: "Lassen wie es war",
  openings: "Öffnungszeiten",
  openingsUsual: "die üblichen, bis Sie Ihre eintragen",
  openAllowed: "10:00–19:00; leer, wo geschlossen",
  closed: "geschlossen",
  open: (from, until) => `${from}–${until}`,
  weekdays: {
    monday: "Montag",
    tuesday: "Dienstag",
    wednesday: "Mittwoch",
    thursday: "Donnerstag",
    friday: "Freitag",
    saturday: "Samstag",
    sunday: "Sonntag",
  },
} as const satisfies Translated<typeof en.PROMISE>;
