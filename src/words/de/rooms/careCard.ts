import type { StageKind } from "#engine/surface/stages";
import type * as en from "../../en/rooms/careCard.ts";
import type { Translated } from "../../translated.ts";

const whole = (figure: number): number => Math.round(Math.abs(figure));
const feet = (count: number): string => (count === 1 ? "einen Fuß" : `${count} Fuß`);
const boards = (count: number): string => (count === 1 ? "1 Board" : `${count} Boards`);
const SEEN = { feet: 0.5, boards: 0.75, degrees: 0.15, clearly: 0.6 };

const DID: Readonly<Record<StageKind, (tool: string | null) => string>> = {
  clean: () => "Gereinigt",
  open: (tool) => (tool === null ? "Oberfläche geöffnet" : `Geöffnet mit ${tool}`),
  extract: () => "Öl gezogen",
  dryOff: () => "Getrocknet und abgekühlt",
  plug: () => "Plug bündig geschliffen",
  cut: (tool) => tool ?? "Geschliffen",
  polish: (tool) => tool ?? "Poliert",
  check: () => "Alle sechs Seiten geprüft",
};

export const CARE_CARD = {
  signFirst: "Zuerst die Arbeit abzeichnen.",
  signFirstWhy: "Eine Pflegekarte sagt, was getan wurde, und von diesem Auftrag ist noch nichts abgezeichnet.",
  toGuide: "Zum Arbeitsführer",
  isAt: (ball, finish) => `${ball} hat ${finish}`,
  inWork: (ball) => `${ball} ist in Arbeit`,
  isDone: (ball) => `${ball} ist fertig`,
  wasAt: (finish) => `hatte ${finish}`,
  left: (steps) => (steps === 1 ? "Ein Schritt ist noch zu tun." : `${steps} Schritte sind noch zu tun.`),

  does: "Was er jetzt tut",
  hooks: (laterFt) =>
    Math.abs(laterFt) < SEEN.feet
      ? "Hakt auf Ihrer Linie, wo er hakte."
      : `Hakt etwa ${feet(whole(laterFt))} ${laterFt > 0 ? "später" : "früher"}.`,
  move: (inBoards, hand, sharperDeg) => {
    if (Math.abs(inBoards) < SEEN.boards) return "Stehen Sie, wo Sie standen.";
    const side = inBoards > 0 === (hand === "right") ? "links" : "rechts";
    const turn = sharperDeg === null || Math.abs(sharperDeg) < SEEN.degrees ? "" : sharperDeg > 0 ? "schärfer" : "sanfter";
    const much = Math.abs(sharperDeg ?? 0) < SEEN.clearly ? "etwas " : "";
    return `${boards(whole(inBoards))} nach ${side}${turn === "" ? "." : `: ${much}${turn} in die Gasse.`}`;
  },
  nowMoved: (inBoards, hand) =>
    Math.abs(inBoards) < SEEN.boards
      ? "jetzt"
      : `jetzt, ${whole(inBoards)} nach ${inBoards > 0 === (hand === "right") ? "links" : "rechts"}`,
  was: "vorher",
  oilEnds: "Ölende",
  fanTitle: "Vorher und jetzt",
  fanDescription: (wasFt, nowFt) =>
    `Der Weg des Balls über die Bahn, vorher und jetzt${wasFt === null || nowFt === null ? "" : `: Er hakte ab ${Math.round(wasFt)} Fuß, jetzt ab ${Math.round(nowFt)}`}.`,
  fromPlan: "Nach dem Plan für Ihren Wurf und dieses Öl; Ihre Bahnen können anders sein.",

  did: "Was wir getan haben",
  step: (kind, tool) => DID[kind](tool),
  way: { wet: "nass", dry: "trocken" },
  sides: (count) => (count === 6 ? "alle sechs Seiten" : count === 1 ? "eine Seite" : `${count} Seiten`),
  sidesOpen: (done, of) => `${done} von ${of} Seiten, noch nicht neu abgezeichnet`,
  measured: (verdict) => `Gemessen: ${verdict}`,
  seen: (verdict) => `Nach Augenschein: ${verdict}`,

  back: "Wiederkommen in",
  games: (count) => `${count} Spielen`,
  around: (date) => `um den ${date}`,
  whatFor: { refresh: "für einen frischen Schliff", extraction: "zum Ölziehen" },
  whenFor: (date, what) => (date === null ? `${what.slice(0, 1).toUpperCase()}${what.slice(1)}.` : `um den ${date}, ${what}.`),
  backWhen: "Wiederkommen, wenn",
  signs: {
    sanded: "er weiter rutscht als jetzt oder die Spur glänzt.",
    polished: "er früher hakt als jetzt oder die Spur matt aussieht.",
  },
  sooner: {
    sanded: "Früher, wenn er weiter rutscht oder die Spur glänzt.",
    polished: "Früher, wenn er früher hakt oder die Spur matt aussieht.",
  },

  care: "So bleibt er gut",
  rules: ["Nach jedem Wurf das Öl abwischen.", "Warm reinigen, am selben Abend.", "Nie im heißen oder eiskalten Auto lassen."],
  events: "Vor Arbeit an der Oberfläche die Regeln des Wettbewerbs prüfen.",
} as const satisfies Translated<typeof en.CARE_CARD>;
