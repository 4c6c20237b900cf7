import type * as en from "../../en/rooms/taught.ts";
import type { Translated } from "../../translated.ts";

const shots = (n: number): string => (n === 1 ? "ein Wurf" : `${n} Würfe`);

export const TAUGHT: Translated<typeof en.TAUGHT> = {
  title: "Was dieses Haus gelehrt hat",
  what: "Aus den hier notierten Würfen: wie trockene Bretter greifen, wie viel Öl liegt und wo, und wie diese Spieler wirklich werfen. Es ist eine Schätzung mit ihrer Spanne, nie eine Messung.",
  from: (bowlers) => `Aus den Würfen von ${bowlers.join(", ")}.`,
  leftOut: (n, bowlers) =>
    `${n === 1 ? "Ein weiterer Wurf bleibt" : `${n} weitere Würfe bleiben`} weg: von ${bowlers} Spielern zusammen wird gelernt.`,
  ofShots: (name, n) => `${name} (${n})`,
  used: (used, of, pattern) => `${used} von ${of} Notizen dieses Hauses sind auf ${pattern} zu gebrauchen.`,
  unused: {
    pattern: (n) => `${n} auf anderem Öl, oder ohne`,
    bowler: (n) => `${n} von niemand Bekanntem`,
    ball: (n) => `${n} ohne Ball`,
    finish: (n) => `${n} ohne die Oberfläche des Balls`,
  },
  none: "Keine Notiz hier nennt Spieler, Ball, seine Oberfläche und dieses Öl. Notieren Sie Würfe damit: zehn sagen wenig, dreißig viel.",
  compute: "Daraus lernen",
  computing: "Wird gelernt …",
  stop: "Anhalten",
  stopped: "Angehalten. Nichts wurde gelernt.",
  notYet: "Es dauert zehn Sekunden bei einem Spieler, etwa eine halbe Minute bei dreien.",
  failed: (why) => `Es konnte nicht gelernt werden: ${why}`,
  old: "Seither kamen Notizen dazu oder gingen: noch einmal lernen.",
  table: "Vorher und jetzt",
  parameter: "Von",
  assumed: "Angenommen",
  now: "Jetzt",
  range: "90 von 100 in",
  picture: "Auf der Spanne",
  left: "Übrige Streuung",
  pictureOf: (name, before, after) => `${name}: angenommen ${before}, jetzt ${after}`,
  keep: "Beim Haus aufheben",
  kept: "Beim Haus aufgehoben. Ein Plan kann es nehmen: unter der Bahn, „Was ein Haus gelehrt hat“.",
  takeOff: "Vom Haus nehmen",
  keptAt: (n, when) => `Beim Haus ist aufgehoben, was ${shots(n)} am ${when} gelehrt ${n === 1 ? "hat" : "haben"}.`,
  inPlan: "Was ein Haus gelehrt hat",
  notInPlan: "nichts: die üblichen Spannen",
  inPlanOf: (house, n) => `${house} (${shots(n)})`,
  fromFile: (n) => `wie die Datei sagt (${shots(n)})`,
};
