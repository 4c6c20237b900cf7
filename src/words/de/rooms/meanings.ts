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
    what: "Wie oft ein erster Ball ein Strike ist, mit der Streuung dieses Spielers, auf der besten Linie dieses Schliffs, über eine Sitzung, in der sich die Bahn verändert. In der Spanne liegen neun von zehn Ziehungen der Annahmen; was im Modell fehlt, ist nicht darin.",
    equation:
      "Chance = Mittel von P(Strike | Board, Eintrittswinkel, Geschwindigkeit, Schlupf) über die Streuung der Würfe; P aus der Tabelle der simulierten Pins",
  },
  line: {
    what: "Wo der Ball am besten aufgesetzt wird und unter welchem Winkel, nur für diesen Schliff. Schliffe werden jeder auf seiner eigenen besten Linie verglichen: Auf derselben Linie verschiebt ein matterer nur den Treffer.",
    equation: "Linie = argmax der Chance über Aufsetzboard und Abwurfwinkel, innerhalb der eingegebenen Grenzen",
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
    what: "Wie weit eines allein auf dieser Linie schwanken darf, und der mittlere Wurf ist noch öfter ein Strike als nicht: die ganze Breite, in Boards beim Aufsetzen, Grad beim Abwurf, oder Geschwindigkeit.",
    equation: "Breite von { δ : P(Strike | Linie + δ) ≥ ½ } um die Linie, eines nach dem anderen",
  },
  keeps: {
    what: "Spiele, bis die Laufspur um eine halbe Stufe der Leiter über die Schliffe hinaus nachgelassen hat, die fast gleich gut sind.",
    equation: "Ra(g) = L + (Ra₀ − L) e^(−g/τ); bis Ra > 1,25 Ra_matteste oder Ra < Ra_glatteste/1,25",
  },
  todaysLine: {
    what: "Wo dieser Schliff träfe, wenn der Spieler nichts änderte: der erste Wurf, nachdem er von der Werkbank zurück ist.",
    equation: "Board an den Pins auf der heutigen Linie, dieser Schliff gegen den heutigen",
  },
} as const satisfies Translated<typeof en.MEANINGS>;
