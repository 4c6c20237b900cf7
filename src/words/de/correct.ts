import { usefulnessOf } from "#engine/learning/usefulness";
import type * as en from "../en/correct.ts";
import type { Translated } from "../translated.ts";
import { fixed, inHundred } from "./figures.ts";
import { USEFULNESS } from "./usefulness.ts";

export const PARAMETER_WORDS: Translated<typeof en.PARAMETER_WORDS> = {
  "house.dry": { name: "Reibung auf dem Trockenen, zur üblichen", unit: "", decimals: 2 },
  "friction.oil": { name: "Reibung auf vollem Öl", unit: "", decimals: 4 },
  "film.scale": { name: "Öl auf der Bahn, zum genannten", unit: "", decimals: 2 },
  "house.frontOil": { name: "Öl vorn, zum genannten", unit: "", decimals: 2 },
  "carriedOil.share": { name: "Öl, das der Ball mitträgt", unit: "", decimals: 2 },
  "friction.laneRoughness": { name: "Rauheit der Bahn", unit: "µm", decimals: 2 },
  speedMph: { name: "Geschwindigkeit beim Abwurf", unit: "mph", decimals: 1 },
  revRateRpm: { name: "Drehzahl", unit: "U/min", decimals: 0 },
  axisRotationDeg: { name: "Achsdrehung", unit: "°", decimals: 1 },
};

export const misfitText: typeof en.misfitText = ({ strange, shots, kinds }, names) => {
  const [worst] = kinds;
  const beside =
    worst.boardsOff === null
      ? ""
      : `, im Mittel ${fixed(Math.abs(worst.boardsOff), 1)} Bretter zu ${worst.boardsOff > 0 ? "hoch" : "leicht"} gegen das Gelernte`;
  return `Diese Würfe passen nicht. ${strange} von ${shots} mit Zahlen liegen dort, wo einer von hundert läge, am meisten die mit ${names[worst.situation]}${beside}. Sieh nach, ob die Bretter von der Seite des Spielers gezählt sind und ob Ball, Linie und Öl die richtigen sind, ehe du das nutzt.`;
};

export const parameterName: typeof en.parameterName = ({ id, hand }, handNames) => {
  const { name } = PARAMETER_WORDS[id];
  return hand === null || handNames.length === 1 ? name : `${handNames[hand]}: ${name}`;
};

export const CORRECT: Translated<typeof en.CORRECT> = {
  figure: (id, value) => {
    const { decimals, unit } = PARAMETER_WORDS[id];
    return `${fixed(value, decimals)}${unit === "" || unit === "°" ? unit : ` ${unit}`}`;
  },
  heading: (shots, kinds) =>
    `${shots === 1 ? "Ein Wurf" : `${shots} Würfe`} ${kinds === 1 ? "einer Art" : `von ${kinds} Arten`} (Ball, Linie, Öl)`,
  columns: {
    what: ["", ""],
    before: ["angenommen", "Spanne"],
    after: ["jetzt", ""],
    range: ["", "5–95 von 100"],
    left: ["Streuung", "übrig"],
  },
  percent: (share) => `${fixed(100 * Math.min(1, share), 0)} %`,
  untold: (names) => `Die Würfe sagen fast nichts von: ${names.join("; ")}.`,
  tied: (first, second, correlation) =>
    correlation > 0
      ? `Aneinander gebunden: mehr ${first} sähe aus wie weniger ${second}; nur ihr Verhältnis ist bekannt (${fixed(correlation, 2)}).`
      : `Gegeneinander gebunden: weniger ${first} sähe aus wie weniger ${second}; nur beide zusammen sind bekannt (${fixed(correlation, 2)}).`,
  next: "Welcher weitere genaue Blick am meisten sagte",
  nextLine: (ball, line, nats, tells, left) =>
    `${ball}, ${line}: ${USEFULNESS[usefulnessOf(nats)]}; verrät am meisten von ${tells}, dessen Streuung zu ${fixed(100 * left, 0)} % bliebe`,
  plans: (worlds) => `Der Schliffplan über ${worlds} Welten, ohne und mit dem, was das Haus gelehrt hat`,
  restsOn: ({ asked, effective, areFew }) =>
    `${asked} Welten wurden gefragt; was gelernt ist, ruht auf etwa ${fixed(effective, 0)} von ihnen${areFew ? ": wenige, nehmen Sie es als grob" : ""}.`,
  beyond: (names) =>
    `Ganz außerhalb dessen, was vorher angenommen war: ${names.join("; ")}. Entweder war das falsch, oder die Notizen sind es: sehen Sie nach, bevor Sie es verwenden.`,
  planLine: (ball, before, after, change) =>
    `${ball}: ${before === after ? `${after} wie vorher` : `vorher ${before}, jetzt ${after}`}; die Wahl trifft nach heutigem Wissen ${inHundred(Math.abs(change))} ${change < 0 ? "seltener" : "öfter"} als gedacht`,
  noPick: "keine genannt",
  notConverged: (factor) =>
    `Die Ziehungen haben sich nicht gesetzt (Gelman–Rubin ${fixed(factor, 2)}): anderer Keim, oder weniger Arten von Würfen.`,
  jobHouse:
    "Mit --json ist der Block `house` für eine Auftragsdatei: ein Plan fragt dann die Welten, die diese Würfe sagen, jede mit ihrem Haus und ihren Händen.",
  held: "Zahlen von Schale und Kontakt werden nicht einzeln gesagt: die Würfe sagen, in welchen Welten sie geworfen wurden.",
};
