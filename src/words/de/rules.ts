import type { RuleId } from "#engine/rules/rulesOfThumb";
import type { Params, Sentence } from "../params.ts";
import { fixed } from "./figures.ts";

const range = (p: Params) => `${p.text("from")} bis ${p.text("to")}`;

export const RULE_SENTENCES: Readonly<Record<RuleId, Sentence>> = {
  urethaneRange: (p) => `Urethan: ${range(p)}. Hakt es noch zu früh, den Ball wechseln, nicht die Oberfläche.`,
  solidRange: (p) => `Reaktives Solid: ${range(p)}.`,
  hybridRange: (p) => `Reaktives Hybrid: etwa ${range(p)}.`,
  pearlRange: (p) => `Reaktives Pearl: ${range(p)}.`,
  weakHookDull: () => "Mehr Geschwindigkeit als Drehzahl oder viel Öl: 500 bis 1000, manchmal 2000.",
  strongHookSmooth: () =>
    "Mehr Drehzahl als Geschwindigkeit oder ein langsamer Ball mit viel Hand: die matten Pads weglassen, 3000 bis 4000, dann Politur.",
  burnSmooth: () => "Auf ausgespielter Bahn: 3000 bis 4000, Politur darüber.",
  transitionHybrid: (p) => `Nach der ersten Veränderung: ein Hybrid mit ${range(p)}.`,
  spareSmooth: () => "Ein Spareball aus Polyester: glatt, poliert.",
  dullerIsEarlier: () => "Matter hakt früher, glatter und poliert später.",
  exitBoard: (p) =>
    `Der Ball verlässt das Öl etwa bei der Länge des Ölmusters weniger 31: Board ${fixed(p.number("board"), 0)} bei ${fixed(p.number("lengthFt"), 0)} ft.`,
};
