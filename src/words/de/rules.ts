import type { RuleId } from "#engine/rules/rulesOfThumb";
import type { Sentence } from "../params.ts";
import { fixed } from "./figures.ts";

export const RULE_SENTENCES: Readonly<Record<RuleId, Sentence>> = {
  urethaneRange: () => "Urethan: 360 bis 1000. Hakt es noch zu früh, den Ball wechseln, nicht die Oberfläche.",
  solidRange: () => "Reaktives Solid: 1000 bis 3000.",
  hybridRange: () => "Reaktives Hybrid: etwa 2000 bis 3000.",
  pearlRange: () => "Reaktives Pearl: 2000 bis 4000.",
  weakHookDull: () => "Mehr Geschwindigkeit als Drehzahl oder viel Öl: 500 bis 1000, manchmal 2000.",
  strongHookSmooth: () =>
    "Mehr Drehzahl als Geschwindigkeit oder ein langsamer Ball mit viel Hand: die matten Pads weglassen, 3000 bis 4000, dann Politur.",
  burnSmooth: () => "Auf ausgespielter Bahn: 3000 bis 4000, Politur darüber.",
  transitionHybrid: () => "Nach der ersten Veränderung: ein Hybrid mit 2000 bis 3000.",
  spareSmooth: () => "Ein Spareball aus Polyester: glatt, poliert.",
  dullerIsEarlier: () => "Matter hakt früher, glatter und poliert später.",
  exitBoard: (p) =>
    `Der Ball verlässt das Öl etwa bei der Länge des Ölmusters weniger 31: Board ${fixed(p.number("board"), 0)} bei ${fixed(p.number("lengthFt"), 0)} ft.`,
};
