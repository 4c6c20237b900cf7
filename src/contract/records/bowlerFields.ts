import type { Described } from "./described.ts";
import type { Role } from "./roles.ts";

/** Who may see a bowler at the least, and who may change one: all of one alike. */
export const BOWLER_ROLES = { see: "reader", change: "counter" } as const satisfies Record<string, Role>;

/** Who the bowler is and how to reach them. */
export const CONTACT_FIELDS = {
  name: { type: "line", says: "Name", needed: true, personal: "name", found: "words", imported: ["bowler", "customer", "full name"] },
  phone: {
    type: "telephone",
    says: "Telephone number, as the bowler writes it",
    personal: "number",
    found: "number",
    imported: ["telephone", "mobile", "phone number"],
  },
  email: { type: "email", says: "Address for electronic mail", personal: "words", found: "no", imported: ["mail", "e-mail"] },
  address: { type: "line", says: "Postal address", personal: "words", found: "no", imported: [] },
  hand: { type: "word", says: "The bowling hand", words: ["right", "left"], imported: ["bowling hand"] },
  grip: { type: "word", says: "How the ball is held", words: ["thumb", "no thumb", "two hands"], imported: ["style"] },
  guardian: {
    type: "group",
    says: "For a bowler under age",
    fields: {
      name: { type: "line", says: "Name of the guardian", needed: true, personal: "name", found: "no" },
      phone: { type: "telephone", says: "Telephone number", personal: "number", found: "number" },
      consentOn: { type: "day", says: "When the guardian agreed" },
    },
  },
  notes: { type: "lines", says: "Notes", imported: ["note", "remarks"] },
} as const satisfies Described;

/** What is known of every shot of theirs. */
export const THROW_FIELDS = {
  spread: {
    type: "group",
    says: "The bowler's own variation from shot to shot, as standard deviations",
    fields: {
      speedMph: { type: "figure", says: "Of the launch speed", unit: "mph", range: { from: 0, to: 10 } },
      revRateRpm: { type: "figure", says: "Of the rev rate", unit: "rpm", range: { from: 0, to: 300 } },
      axisRotationDeg: { type: "figure", says: "Of the axis rotation", unit: "deg", range: { from: 0, to: 90 } },
      launchAngleDeg: { type: "figure", says: "Of the launch angle", unit: "deg", range: { from: 0, to: 10 } },
      laydownBoards: { type: "figure", says: "Of the laydown board", unit: "boards", range: { from: 0, to: 10 } },
    },
  },
  pap: {
    type: "group",
    says: "Positive axis point",
    fields: {
      overIn: { type: "figure", says: "Over", needed: true, unit: "in", range: { from: -13.5, to: 13.5 } },
      upIn: { type: "figure", says: "Up", needed: true, unit: "in", range: { from: -13.5, to: 13.5 } },
    },
  },
} as const satisfies Described;

export const BOWLER_FIELDS = { ...CONTACT_FIELDS, ...THROW_FIELDS } as const;
