import type { SpeedClass } from "#engine/delivery/style";
import type * as en from "../en/delivery.ts";
import type { Translated } from "../translated.ts";
import { degrees, fixed, mph } from "./figures.ts";

export const DELIVERY_WORDS: Translated<typeof en.DELIVERY_WORDS> = {
  speedMph: { name: "Abwurfgeschwindigkeit", figure: mph },
  revRateRpm: { name: "Drehzahl", figure: (rpm) => `${fixed(rpm, 0)} U/min` },
  axisRotationDeg: { name: "Achsrotation", figure: degrees },
  axisTiltDeg: { name: "Achsneigung", figure: degrees },
};

export const SPEED_CLASS_WORDS: Readonly<Record<SpeedClass, string>> = {
  speedDominant: "geschwindigkeitsbetont",
  matched: "ausgewogen",
  revDominant: "drehzahlbetont",
};

export const SPEED_CLASS_MEANS: Readonly<Record<SpeedClass, string>> = {
  speedDominant:
    "Der Ball ist über das Öl hinweg, bevor er zu drehen beginnt: stumpfere Schliffe, 500 bis 1000, manchmal 2000 (allgemeine Praxis).",
  matched: "Die Mitte der Spanne jeder Schale ist der Anfang (allgemeine Praxis).",
  revDominant: "Der Ball dreht von selbst früh: glattere Schliffe, ab 3000, Politur, wo er noch zu früh dreht (allgemeine Praxis).",
};

export const DELIVERY: Translated<typeof en.DELIVERY> = {
  heading: (name, shots) => `${name}, aus ${shots === 1 ? "einem Wurf" : `${shots} Würfen`}`,
  measured: (value, low, high, shots) => `${value}  (${low} bis ${high}${shots > 1 ? `, Mittel aus ${shots}` : ""})`,
  taken: (value) => `${value}  nicht gemessen, wie üblich genommen`,
  spread: (value) => `schwankt um ${value} von Wurf zu Wurf`,
  spreadHidden: "schwankt um weniger, als ablesbar ist",
  pap: "Positiver Achspunkt",
  over: (value) => `${fixed(value, 2)} in zur Seite`,
  upOrDown: (value) => `${fixed(Math.abs(value), 2)} in nach ${value < 0 ? "unten" : "oben"}`,
  spin: (value, low, high) => `Drehung gegen Geschwindigkeit, Rω/v: ${fixed(value, 2)} (${fixed(low, 2)} bis ${fixed(high, 2)})`,
  isClass: (name) => `${name}.`,
  couldBe: (names) => `Die Ablesung lässt auch ${names.join(" oder ")} zu.`,
  jobBowler: "Für eine Auftragsdatei",
  ends: "Zahlen in Klammern: ein Bild, eine Marke oder eine Anzeige mehr oder weniger; bei mehreren Würfen das 95-%-Intervall des Mittels.",
  laneUnknown: "Die Bahn steht nicht in der Datei: Die Grenzen der Geschwindigkeit umfassen leichtes, mittleres und schweres Öl.",
};
