import type * as en from "../../en/rooms/pricing.ts";
import type { Translated } from "../../translated.ts";

export const PRICING = {
  charged: "Berechnete Arbeit",
  usual: (names, amount) => `${amount} nach der Arbeit: ${names}`,
  toBePriced: "Preis fehlt noch",
  later: "Preis später",
  free: "kostenlos",
  freeWhy: "Warum kostenlos",
  needsWhy: "Sagen Sie, warum es nichts kostet.",
  price: (name, amount) => `${amount} ${name}`,
  ask: "Was kostet es?",
  askWhy: (ball) => `${ball} hat noch keinen Preis. So herausgegeben steht er bei den offenen Beträgen.`,
  handOver: "Herausgeben",
  handOverLater: "Preis später",
  leave: "Hierbehalten",
  priceIt: "Preis für die Arbeit",
  isNotPriced: (ball) => `${ball}: noch ohne Preis`,
  isFree: (ball, why) => `${ball}: kostenlos, ${why}`,
  keep: "Aufbewahren",
  work: "Wird von selbst berechnet für",
  works: {
    "": "nichts, von Hand gewählt",
    refresh: "Auffrischen",
    resurface: "neuen Schliff",
    polish: "Politur",
    extraction: "Ölentzug",
    plug: "Stopfen",
  },
  workHelp: "wenn nur ein Preis für diese Arbeit gilt",
} as const satisfies Translated<typeof en.PRICING>;
