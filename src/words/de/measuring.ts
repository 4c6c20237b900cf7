import type * as en from "../en/measuring.ts";
import type { Translated } from "../translated.ts";
import { fixed } from "./figures.ts";

export const PROFILE = {
  title: "Profil",
  description: (name, ra, cutoff) => `${name}: Rauheitsprofil mit seiner Mittellinie; Ra ${ra} µm, Grenzwellenlänge ${cutoff} mm.`,
  cutoffBy: { stated: "wie angegeben", table: "nach der Tabelle der Norm", length: "die längste, die das Profil erlaubt" },
  evaluated: (cutoff, by, lengths, evaluation) =>
    `Grenzwellenlänge ${fixed(cutoff, 2)} mm (${by}), ${lengths} ${lengths === 1 ? "Einzelmessstrecke" : "Einzelmessstrecken"}, ${fixed(evaluation, 2)} mm ausgewertet`,
  short: (cutoff, evaluation) => `Grenzwellenlänge ${fixed(cutoff, 2)} mm, ${fixed(evaluation, 2)} mm ausgewertet`,
  points: (count, missing) => `${count} Punkte${missing > 0 ? `, ${missing} nicht gemessen` : ""}`,
  checksum: (modulo) =>
    modulo === 65536 ? "Prüfsumme stimmt, modulo 65536 wie in ISO 5436-2" : `Prüfsumme stimmt, modulo ${modulo}, wo ISO 5436-2 65536 nennt`,
  areal: "eine Fläche, kein Profil: Zahlen um ihre mittlere Höhe, ungefiltert",
  height: "Höhe, µm",
  distance: "Weg, mm",
  meanLine: "Mittellinie",
  evaluation: "ausgewertet",
  effective: (um) => `wie der Plan es nimmt: ${fixed(um, 2)} µm wirksam`,
} as const satisfies Translated<typeof en.PROFILE>;

export const GAUGE = {
  range: "Spannweitenmethode",
  anova: "Varianzanalyse",
  rows: { ev: "Wiederholbarkeit", av: "zwischen Personen", grr: "beides zusammen", pv: "zwischen Teilen" },
  columns: { sd: "Streuung", share: "% von allem" },
  distinct: (count) => `Kann ${count} ${count === 1 ? "Klasse" : "Klassen"} von Teilen unterscheiden.`,
  interaction: (f, pooled) =>
    f === null
      ? "Eine Wechselwirkung lässt sich nicht bestimmen."
      : `Wechselwirkung von Personen und Teilen: F ${fixed(f, 3)}${pooled ? ", nicht mehr als Zufall: zur Wiederholbarkeit gezählt" : ""}.`,
  verdict: (percent) =>
    percent < 10
      ? "Gut genug für jeden Gebrauch."
      : percent <= 30
        ? "Brauchbar, mit Vorsicht: Personen unterscheiden oder mehrere Messungen mitteln."
        : "Nicht gut genug: Gerät oder Gebrauch verdecken die Unterschiede der Teile.",
  chart: (mean, lower, upper) => `Vergleichsstück: Mittel ${fixed(mean, 2)}, Grenzen ${fixed(lower, 2)} bis ${fixed(upper, 2)}.`,
  outside: (places) =>
    places.length === 0
      ? "Jede Messung innerhalb der Grenzen."
      : `Außerhalb: Messung ${places.map((place) => place + 1).join(", ")}. Vor dem nächsten Ball die Ursache suchen.`,
  tooLargeForRange: "Die Tabellen der Spannweitenmethode reichen nicht bis zu dieser Studie.",
} as const satisfies Translated<typeof en.GAUGE>;

export const READINGS = {
  verdict: {
    even: "Die Seiten stimmen überein.",
    uneven: "Die Seiten stimmen nicht überein.",
    cannotTell: "Zu wenige Messungen, um zu sagen, ob die Seiten übereinstimmen: auf jeder mehr nehmen.",
  },
  mean: (um, target) => `Alle Seiten: ${fixed(um, 2)} µm wirksam; gewünscht ${fixed(target, 2)}.`,
  spread: (between, most, within) =>
    `Seiten unterscheiden sich um etwa das ${fixed(Math.exp(between), 2)}-Fache (höchstens ${fixed(Math.exp(most), 2)}); Messungen auf einer Seite um das ${fixed(Math.exp(within), 2)}-Fache.`,
  stands: { met: "wie gewünscht", tooDull: "zu matt", tooSmooth: "zu glatt" },
  backTo: (side, seconds) => `Zuerst zurück zu ${side}, etwa ${fixed(seconds, 0)} s mit dem letzten Pad.`,
  columns: { side: "Seite", ra: "Ra µm wirks.", range: "Spanne", stands: "steht", more: "noch, s" },
  chartTitle: "Messungen nach Seiten",
  chartDescription: (sides) => `Wirksame Rauheit nach Seiten mit 95-%-Spannen, die gewünschte als Linie: ${sides}.`,
  wanted: "gewünscht",
} as const satisfies Translated<typeof en.READINGS>;
