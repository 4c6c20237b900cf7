import type * as en from "../../en/rooms/meanings.ts";
import type { Translated } from "../../translated.ts";

export const MEANING = {
  all: "Was die Zahlen bedeuten",
  title: (column) => `${column}: was es bedeutet`,
  equation: "Gleichung",
  rests: "Beruht auf",
  taken: (value, range, mark) => `${value} (${range}), ${mark}`,
  from: (source) => `Quelle: ${source}`,
  page: (name) => `Herleitung, Bereich und Grenzen stehen in docs/model/${name}.`,
  close: "Schließen",
} as const satisfies Translated<typeof en.MEANING>;

export const MEANINGS = {
  chance: {
    what: "Wie oft ein erster Ball ein Strike ist, mit der Streuung dieses Spielers, auf den fast besten Linien dieses Schliffs, über eine Sitzung, in der sich die Bahn verändert: das Mittel über ganze Welten, jede ein Wert für alles, was niemand gemessen hat, gewogen nach Veröffentlichtem und nach dem, was das Fach tut. In der Spanne liegen neun von zehn Welten; was im Modell fehlt, ist nicht darin.",
    equation:
      "Chance = Σ w S über die Welten; S = Mittel über die Sitzung von Σ v P über die Linien, v ∝ e^((P − max P)/0,01); P = Mittel von P(Strike | Board, Eintritt, Geschwindigkeit, Schlupf) über die Streuung der Würfe",
  },
  line: {
    what: "Wo der Ball aufgesetzt wird und unter welchem Winkel, nur für diesen Schliff: von den Linien, die so gut sind wie die beste, die mit dem kleinsten Umzug. Schliffe werden jeder auf seiner eigenen besten Linie verglichen: Auf derselben Linie verschiebt ein matterer nur den Treffer.",
    equation: "Linie = kleinster Umzug von der heutigen unter { P ≥ max P − 0,005 }, innerhalb der eingegebenen Grenzen",
  },
  hookAndRoll: {
    what: "Wo der Ball von seiner Linie abzubiegen beginnt, und wo er nicht mehr rutscht und nur noch rollt.",
    equation:
      "dv/dt = −µ g u/|u|, du/dt = −(1 + 1/κ) µ g u/|u|, u der Schlupf; µ = s µ_trocken + (1 − s) µ_Öl, s = 1/(1 + (h/(l₀ c σ))^p), σ = √(Ra_Ball² + Ra_Bahn²)",
  },
  entry: {
    what: "Der Winkel zwischen dem Weg des Balls und der Bahn, wo er auf die Pins trifft.",
    equation: "Eintritt = arctan(v_x/v_y) in der Ebene der Pins; rollt er vorher ganz, hängt Eintritt plus Abwurfwinkel nur vom Wurf ab",
  },
  slip: {
    what: "Wie schnell der Ball an den Pins noch über die Bahn rutscht: gar nicht, wo er rollt. Ein Ball, der rutscht, hat nicht alles abgebogen, was er kann.",
    equation: "|u| = |v − ω × R| an den Pins",
  },
  room: {
    what: "Was es an Strikes in hundert kostet, wenn die Mitte der Würfe um ein Board beim Aufsetzen, ein halbes Grad beim Abwurf oder eine Meile in der Stunde daneben liegt.",
    equation:
      "P(Linie) − ½ (P(Linie + δ) + P(Linie − δ)), eines nach dem anderen, P über die Streuung des Spielers auf der vorgefundenen Bahn",
  },
  keeps: {
    what: "Spiele, bis die Laufspur eine halbe Stufe der Leiter von dem entfernt ist, was aufgetragen wurde.",
    equation: "Ra(g) = L + (Ra₀ − L) e^(−g/τ); bis Ra 1,25 mal Ra₀ ist, oder Ra₀/1,25",
  },
  todaysLine: {
    what: "Wo dieser Schliff träfe, wenn der Spieler nichts änderte, und wie oft er ein Strike wäre, wenn diese Linie die Sitzung über gehalten wird.",
    equation: "Board an den Pins auf der heutigen Linie, dieser Schliff gegen den heutigen",
  },
} as const satisfies Translated<typeof en.MEANINGS>;
