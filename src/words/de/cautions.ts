import type { CautionId } from "#engine/rules/cautions";
import type { Sentence } from "../params.ts";

export const CAUTION_SENTENCES: Readonly<Record<CautionId, Sentence>> = {
  lookFirst: () =>
    "Zuerst den Ball ansehen. Ein Riss oder ein hohler Klang: kein Drehgerät, keine Wärme; fotografieren und nach der Garantie fragen. Die Seriennummer fotografieren, bevor sie abgeschliffen werden kann. Einen kalten Ball auf Raumwärme kommen lassen.",
  spinner: () =>
    "Drehgerät: Haare, Ärmel und Ringe zurückbinden oder ablegen, keine Handschuhe, Schutzbrille. Anhalten, bevor der Ball gedreht wird. Ein Ball wiegt 6 bis 16 lb (3 bis 7 kg): nahe am Körper heben. Gehörschutz ab 85 dB(A).",
  water: () => "Wasser neben einem Motor: nur an einer Steckdose mit Fehlerstromschutzschalter.",
  dust: () =>
    "Nass schleifen, wo das Schleifmittel es erlaubt; sonst mit Absaugung und Atemschutz (Staub allgemein, USA: 15 mg/m³ gesamt, 5 alveolengängig; es gelten die Grenzwerte vor Ort).",
  floor: () => "Boden, Schuhe und Anlauf trocken und frei von Staub und Politur halten: Spieler stürzen.",
  polish: () => "Keine Politur ins Daumenloch, keine scharfen Kanten.",
  cleaner: () =>
    "Lösemittel wie Isopropylalkohol sind leicht entzündlich, und manche erweichen Schalen: nur, was der Hersteller des Balls und das Regelbuch erlauben. Lüften, keine Flamme, Handschuhe, nie auf ein laufendes Drehgerät, und den Ball ablüften lassen, bevor Wärme kommt.",
  heat: () =>
    "Wärme zieht Öl heraus und kann den Ball ruinieren: nie über die Grenze seines Herstellers und nie über 60 °C (140 °F); ab 54 °C (130 °F) reißen Schalen und lösen sich Kerne. Rechnen Sie damit, dass die Garantie damit endet.",
  wetPaper: () =>
    "Nassschleifpapier nur nass, mit viel Wasser und ohne Gewicht auf einer Stelle: trocken ruiniert es den Ball, gedrückt macht es eine Flachstelle.",
  wholeSurface: () =>
    "Die ganze Oberfläche gleich bearbeiten, alle sechs Seiten: Nur die Laufspur zu schleifen ist gegen die Ausrüstungsregeln.",
  roughReading: () =>
    "Die heutige Messung liegt über 50 µin, der Grenze bei der Herstellung. Sie bindet den Besitzer nicht, aber die Regeln einer Veranstaltung können es.",
  veryDull: () => "So matt kann eine frische Oberfläche mehr zeigen, als manche Veranstaltung erlaubt: vor einem Turnier messen.",
  ruleBook: () =>
    "Im Wettkampf kein Schleifen mehr, sobald gezählt wird; was vorher erlaubt ist, unterscheidet sich nach Regelbuch und Veranstaltung.",
};
