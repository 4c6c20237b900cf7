import type { BagMessageId, BagReasonId } from "#engine/planning/bag/bagPlan";
import type * as en from "../en/bag.ts";
import type { Sentence } from "../params.ts";
import type { Translated } from "../translated.ts";
import { degrees, feet, fixed, inHundred, launchAngle } from "./figures.ts";

const strikes = (count: number) => `${fixed(count, 1)} ${fixed(Math.abs(count), 1) === "1,0" ? "Strike" : "Strikes"}`;

const REASONS: Readonly<Record<BagReasonId, Sentence>> = {
  "bag.earlier": (p) => `er hakt ${feet(p.number("feet"))} früher`,
  "bag.later": (p) => `er hakt ${feet(p.number("feet"))} später`,
  "bag.steeper": (p) => `er kommt ${degrees(p.number("degrees"))} steiler`,
  "bag.flatter": (p) => `er kommt ${degrees(p.number("degrees"))} flacher`,
  "bag.runnerUpHasNoLine": () => "der andere hat dort keine sinnvolle Linie",
  "bag.alike": () => "vom Anlauf aus sähe niemand einen Unterschied",
  "bag.staysToSaveAChange": () =>
    "der andere wäre dort besser, aber um weniger, als es kostet: an Arbeit, an Ballwechsel, oder wo das Modell irrt",
};

const MESSAGES: Readonly<Record<BagMessageId, Sentence>> = {
  "bag.onlyAside": () => "Kein Ball hier ist für Strikes gedacht: Spare- und Hausbälle bleiben aus dem Plan.",
  "bag.noLine": () => "Kein Ball dieser Tasche hat auf diesem Öl eine sinnvolle Linie, wie er auch bearbeitet wird.",
  "bag.noWorkIsAsGood": (p) =>
    `Nichts an den Bällen zu tun macht kaum einen Unterschied: Die Arbeit bringt ${strikes(p.number("strikes"))}.`,
  "bag.oneBallIsAsGood": (p) =>
    `${p.text("ball")} die ganze Zeit macht kaum einen Unterschied: Die Wechsel bringen ${strikes(p.number("strikes"))}, nach dem, was sie kosten.`,
  "bag.workAsk": () => "Über Arbeit vor der Sitzung wurde keine Regel gelesen: Fragen Sie den Veranstalter.",
  "bag.practiceNotAllowed": (p) => `Im Einwerfen ist kein Schleifen geplant: Die Regeln sagen „${p.text("answer")}“.`,
  "bag.betweenNotAllowed": (p) => `Zwischen den Spielen ist kein Schleifen geplant: Die Regeln sagen „${p.text("answer")}“.`,
  "bag.overlap": (p) =>
    `${p.text("first")} und ${p.text("second")} tun auf dem ersten Öl dasselbe: Einer könnte zu Hause bleiben oder anders bearbeitet werden.`,
  "bag.gap": (p) =>
    `Eine Lücke in Spiel ${fixed(p.number("game"), 0)}: Ein gewöhnlicher Ball, ${p.text("cover")} mit ${p.text("finish")}, brächte ${inHundred(p.number("points"))} Strikes mehr als der beste der Tasche.`,
  "bag.gapAtNone": () => "Keine Lücke: Kein gewöhnlicher Ball einer fehlenden Schale wäre um zwei Strikes von hundert besser.",
  "bag.ownWear": () =>
    "Die meisten Würfe auf dieser Bahn sind die des Spielers selbst: Das Öl wurde zweimal durchgespielt, beim zweiten Mal mit den gewählten Bällen.",
};

export const BAG_SENTENCES: Readonly<Record<string, Sentence>> = { ...REASONS, ...MESSAGES };

const changesOfBall = (count: number) => (count === 0 ? "kein Ballwechsel" : count === 1 ? "ein Ballwechsel" : `${count} Ballwechsel`);

export const BAG = {
  title: "Die Tasche durch die Sitzung",
  heading: (bowler, balls, games) =>
    `${bowler}: ${balls === 1 ? "ein Ball" : `${balls} Bälle`}, ${games === 1 ? "ein Spiel" : `${games} Spiele`}`,
  strikes: (value, low, high, frames) =>
    `${fixed(value, 1)} Strikes (${fixed(low, 1)}–${fixed(high, 1)}) bei ${fixed(frames, 0)} ersten Bällen`,
  changes: changesOfBall,
  sure: { sure: "sicher", likely: "wahrscheinlich", unsure: "nicht sicher" },
  sureText: (share) => `so gut wie das Beste in ${fixed(100 * share, 0)} von 100 Ziehungen dessen, was angenommen ist`,
  beforehand: "Vorher",
  nothingBeforehand: "Nichts: Jeder Ball geht, wie er ist.",
  work: (ball, from, to, minutes) => `${ball}: ${from} → ${to}, etwa ${fixed(minutes, 0)} min an der Werkbank`,
  byHand: (ball, number, game, minutes) =>
    game === 1
      ? `${ball}: beim Einwerfen von Hand mit einem trockenen Pad ${number}, etwa ${fixed(minutes, 0)} min`
      : `${ball}: vor Spiel ${game} von Hand mit einem trockenen Pad ${number}, etwa ${fixed(minutes, 0)} min`,
  stay: (balls) => `In der Tasche bleiben: ${balls.join(", ")}.`,
  aside: (balls) => `Weggelassen, nicht für Strikes gedacht: ${balls.join(", ")}.`,
  asItLies: (finish) => `${finish}, wie er ist`,
  through: "Durch die Sitzung",
  stretch: (ball, finish, from, to) => (from === to ? `${from}: ${ball}, ${finish}` : `${from} bis ${to}: ${ball}, ${finish}`),
  place: (game, part, parts) => (parts === 1 ? `Spiel ${game}` : `Spiel ${game}.${part}`),
  against: (ball, finish, gain, low, high) =>
    `gegen ${ball}, ${finish}: ${gain < 0 ? "" : "+"}${fixed(gain, 1)} Strikes (${fixed(low, 1)} bis ${fixed(high, 1)})`,
  columns: {
    when: ["", ""],
    ball: ["Ball", ""],
    line: ["Linie", ""],
    hook: ["Haken", "ft"],
    entry: ["Eintritt", "Grad"],
    chance: ["Strikes", "von 100"],
    oil: ["Öl", "mL"],
  },
  line: (board, launchDeg) => `${fixed(board, 0)}, ${launchAngle(launchDeg, 1)}`,
  without: (ball, value, low, high) =>
    value <= 0.05
      ? `Ohne ${ball}: nichts Nennenswertes verloren (${fixed(low, 1)} bis ${fixed(high, 1)}).`
      : `Ohne ${ball}: ${strikes(value)} weniger (${fixed(low, 1)} bis ${fixed(high, 1)}).`,
  noWork: (value, low, high) => `Die Arbeit bringt ${strikes(value)} (${fixed(low, 1)} bis ${fixed(high, 1)}).`,
  oneBall: (ball, finish, value, low, high) =>
    `Gegen ${ball} mit ${finish} die ganze Zeit: ${value < 0 ? "" : "+"}${fixed(value, 1)} Strikes (${fixed(low, 1)} bis ${fixed(high, 1)}).`,
  mostPossible: (value, low, high, minutes, changes) =>
    `Das Meiste, was Arbeit und Wechsel bringen könnten: ${strikes(value)} (${fixed(low, 1)} bis ${fixed(high, 1)}), mit ${fixed(minutes, 0)} min Arbeit; ${changesOfBall(changes)}.`,
  assumed:
    "Andere auf der Bahn, Veränderung des Öls und das Fallen der Pins sind angenommen, nicht gemessen; Spannen in docs/model/bag-plan.md.",
  chartHook: "Haken beginnt, ft",
  chartEntry: "Eintrittswinkel, Grad",
  chartNote: "jeder Ball auf seiner eigenen Linie; vom ersten Öl (mit Textur) zum letzten (Ring)",
  chartGame: (game) => `Spiel ${game}`,
  chartDescription: (rows) => `Bälle der Tasche danach, wo sie zu haken beginnen und wie steil sie kommen. ${rows.join(" ")}`,
  chartRow: (ball, finish, hookFt, entryDeg) => `${ball}, ${finish}: ${feet(hookFt)}, ${degrees(entryDeg)}.`,
} as const satisfies Translated<typeof en.BAG>;
