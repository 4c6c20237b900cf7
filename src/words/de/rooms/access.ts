import type * as en from "../../en/rooms/access.ts";
import type { Translated } from "../../translated.ts";

export const ACCESS = {
  title: "Anmelden",
  name: "Anmeldename",
  password: "Passwort",
  signIn: "Anmelden",
  signingIn: "Wird angemeldet …",
  forgotten:
    "Vergessen? Ein Inhaber setzt im Raum Werkstatt ein neues. Für das eigene eines Inhabers sagt docs/server.md, was am Rechner der Werkstatt zu tun ist.",
  waitsHere: (count) =>
    count === 1
      ? "1 Sache, die hier geschrieben wurde, wartet in diesem Browser. Sie wird gesendet, wenn sich anmeldet, wer sie schrieb."
      : `${count} Sachen, die hier geschrieben wurden, warten in diesem Browser. Jede wird gesendet, wenn sich anmeldet, wer sie schrieb.`,
  othersWait: (count) =>
    count === 1
      ? "1 Sache, die hier jemand anders schrieb, wird gesendet, wenn diese Person sich hier anmeldet."
      : `${count} Sachen, die hier jemand anders schrieb, werden gesendet, wenn diese Person sich hier anmeldet.`,

  roles: { reader: "sieht nur", counter: "Tresen", technician: "Techniker", owner: "Inhaber" },
  rolesMay: {
    reader: "sieht Arbeit, Bälle und Kunden; kein Geld",
    counter: "nimmt an, gibt aus, kassiert; Kunden",
    technician: "auch die Werkbank: Stufen, Messungen, Lager, Bahnen",
    owner: "alles: Preise, Leute, Einstellungen, Sicherungen",
  },

  open: (initials, name) => `${initials} · ${name}`,
  openName: "Wer angemeldet ist",
  takeOver: "Jemand anders übernimmt",
  takeOverWho: "Wer",
  pin: "PIN",
  pinHelp: "4 bis 8 Ziffern",
  change: "Übernehmen",
  noTakers: "Sonst hat niemand eine PIN. Jeder setzt seine eigene, hier, nach dem Anmelden.",
  pinOffFor: (name) => `${name} (PIN gesperrt)`,
  signOut: "Abmelden",
  signOutWaits: (count) =>
    count === 1
      ? "1 Sache wartet noch darauf, gesendet zu werden. Sie bleibt in diesem Browser, bis Sie sich hier wieder anmelden. Was aus der Werkstatt gelesen wurde, wird hier weggeworfen."
      : `${count} Sachen warten noch darauf, gesendet zu werden. Sie bleiben in diesem Browser, bis Sie sich hier wieder anmelden. Was aus der Werkstatt gelesen wurde, wird hier weggeworfen.`,
  signOutAnyway: "Trotzdem abmelden",
  stay: "Bleiben",
  close: "Schließen",

  own: "Ihr Passwort und Ihre PIN",
  ownPassword: "Ihr bisheriges Passwort",
  ownPasswordAsked: "Ihr eigenes Passwort",
  newPassword: "Neues Passwort",
  newPasswordHelp: "10 Zeichen oder mehr; ein paar Wörter sind leichter als Zeichen. Ihre anderen Browser werden abgemeldet.",
  setPassword: "Passwort setzen",
  newPin: "Neue PIN",
  newPinHelp: "4 bis 8 Ziffern; leer nimmt sie weg",
  setPin: "PIN setzen",
  kept: "Aufbewahrt.",

  signIns: "Wer hereindarf",
  firstWhy:
    "Noch hat niemand ein Passwort: Wer an diesem Rechner sitzt, darf alles. Mit dem ersten Passwort endet das, auch hier. Es macht seine Person zum Inhaber, und der gibt den anderen ihres.",
  signInsWhy: "Jede Rolle darf, was die vor ihr dürfen. Ein neues Passwort meldet die Person überall ab.",
  columns: { person: "Person", name: "Anmeldename", role: "Rolle", pin: "PIN" },
  hasPin: "ja",
  noPin: "nein",
  pinIsOff: "gesperrt, bis das Passwort benutzt wurde",
  none: "kein Passwort",
  role: "Rolle",
  give: "Passwort geben",
  giveTo: (name) => `Passwort geben: ${name}`,
  changeOf: (name) => `Ändern: ${name}`,
  changeShort: "Ändern",
  passwordFor: "Passwort für die Person",
  passwordStays: "leer: bleibt, wie es ist",
  takePin: "PIN wegnehmen",
  takeAway: "Anmeldung wegnehmen",
  keep: "Aufbewahren",
  leave: "Lassen, wie es ist",

  sessions: "Jetzt angemeldet",
  sessionColumns: { person: "Wer", since: "seit", seen: "zuletzt gesehen", from: "von" },
  here: "dieser Browser",
  end: "Beenden",
  endOf: (name, seen) => `Beenden: ${name}, zuletzt gesehen ${seen}`,

  notForRole: "Ihre Rolle erlaubt das nicht. Ein Inhaber kann das im Raum Werkstatt ändern.",
  notForRoom: (role) => `Dieser Raum ist für: ${role}.`,
  notSignedIn: "Hier ist niemand mehr angemeldet. Melden Sie sich an; was Sie geschrieben haben, ist noch da.",
  wrongSecret: "Das stimmt nicht. Nichts wurde geändert.",
  wrongSignIn: "Name oder Passwort stimmt nicht.",
  pinOff: "Zu viele falsche PINs. Die Person meldet sich einmal mit dem Passwort an, dann gilt die PIN wieder.",
  otherPerson: "An diesem Browser ist inzwischen jemand anders angemeldet.",
  waitFirst: (seconds) => `Zu viele vergebliche Versuche. Versuchen Sie es in ${seconds} s noch einmal.`,
} as const satisfies Translated<typeof en.ACCESS>;
