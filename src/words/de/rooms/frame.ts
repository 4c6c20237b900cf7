import type * as en from "../../en/rooms/frame.ts";
import type { Translated } from "../../translated.ts";

export const SHOP_FRAME = {
  rooms: "Räume",
  today: "Heute",
  intake: "Annahme",
  laneSide: "An der Bahn",
  lanes: "Bahnen",
  measure: "Messen",
  plan: "Schliffplan",
  stock: "Lager",
  money: "Kasse",
  shop: "Werkstatt",
  whoActs: "Am Werk",
  nobody: "noch niemand",
  inventedName: "Erfundene Werkstatt",
  invented: "Erfundene Werkstatt: alle Personen, Bälle und Orte darin sind ausgedacht.",
  away: "Der Server der Werkstatt antwortet nicht. Was zu sehen ist, wurde vorher gelesen; was geschrieben wird, ist noch nicht aufbewahrt.",
  serverAway:
    "Der Server der Werkstatt antwortet nicht. Die Arbeit geht weiter: Was hier abgezeichnet, notiert und entschieden wird, wartet in diesem Browser und wird gesendet, sobald der Server wieder da ist.",
  onlyReading:
    "Eine neuere Version des Programms war an diesen Aufzeichnungen. Diese hier liest sie nur, damit sie nichts verdirbt: Starten Sie die neuere.",
  serverBack: "Der Server antwortet wieder; was zu sehen ist, wurde neu gelesen.",
  readAt: (when) => `Was zu sehen ist, wurde ${when} oder später gelesen.`,
  plainAddressName: "Was unter dieser Adresse fehlt",
  plainAddress:
    "Diese Adresse ist weder dieser Rechner selbst noch verschlüsselt, darum verbietet der Browser hier einiges: Die Seite lässt sich nicht installieren und nicht öffnen, während der Server weg ist, und der Bildschirm kann an der Werkbank nicht wach gehalten werden. Öffnen Sie sie auf dem Rechner der Werkstatt oder über eine sichere Adresse. Was geschrieben wird, bleibt auch hier, bis es gesendet ist.",
  understood: "Verstanden",
  tryAgain: "Noch einmal versuchen",
  reading: "Wird gelesen …",
  nothingHere: "Hier ist noch nichts.",
  failedToRead: (what) => `Das ließ sich nicht lesen: ${what}`,
  changedMeanwhile: "Jemand anders hat das inzwischen geändert. Unten steht, wie es jetzt ist; was Sie getippt haben, steht noch da.",
  refused: (what, why) => `Die Werkstatt hat „${what}“ nicht angenommen: ${why}`,
  stillToSend: "Noch nicht bei der Werkstatt",
  dealtWith: "Ich habe mich darum gekümmert",
  undo: "Rückgängig",
  saved: "Aufbewahrt.",
} as const satisfies Translated<typeof en.SHOP_FRAME>;

export const WAITING = {
  ticketChange: "Änderung eines Auftrags",
  ticketMove: (state) => `Auftrag weiter zu: ${state}`,
  conflict: (what) => `Jemand anders hat es geändert, während dies wartete: ${what}. Nichts ist verloren; was von beidem soll gelten?`,
  both: (field, mine, theirs) => `${field}: hier geschrieben ${mine}; in der Werkstatt ${theirs}`,
  nothing: "nichts",
  sendMine: "Meines trotzdem senden",
  leaveTheirs: "Lassen, was die Werkstatt hat",
  notKept: "Dieser Browser bewahrt nichts davon auf: Lassen Sie die Seite offen, bis es gesendet ist.",
} as const satisfies Translated<typeof en.WAITING>;

export const FIND_BALL = {
  find: "Seriennummer, Name oder Telefon",
  help: "Das Ende einer Nummer genügt.",
  none: "Kein Ball mit diesem Namen oder dieser Nummer.",
} as const satisfies Translated<typeof en.FIND_BALL>;
