import type { PlanMessageId } from "#engine/planning/messageIds";
import type { Params, Sentence } from "../params.ts";
import { boards, degrees, feet, fixed, inHundred, metresPerSecond } from "./figures.ts";
import { QUANTITY_WORDS } from "./limits.ts";
import { COVER_WORDS } from "./screens.ts";

type PlanSentenceId = Exclude<PlanMessageId, `rule.${string}` | `caution.${string}`>;

const line = (p: Params) => `Aufsetzboard ${fixed(p.number("laydownBoard"), 1)}, Abwurf ${degrees(p.number("launchAngleDeg"))}`;

function quantityWord(quantity: string): string {
  return Object.entries(QUANTITY_WORDS).find(([id]) => id === quantity)?.[1][0] ?? quantity;
}

function coversText(ids: string): string {
  const words: Readonly<Record<string, string>> = COVER_WORDS;
  return new Intl.ListFormat("de", { type: "conjunction" }).format(ids.split(",").map((id) => words[id] ?? id));
}

export const PLAN_SENTENCES: Readonly<Record<PlanSentenceId, Sentence>> = {
  "message.noMatter": (p) =>
    `Der Schliff macht hier nichts aus: Alle ${fixed(p.number("finishes"), 0)} liegen innerhalb von ${inHundred(p.number("points"))}. Lassen Sie die Oberfläche, wie sie ist, oder wählen Sie danach, wie lange sie hält.`,
  "message.noMatterOfHook": (p) =>
    `Der Schliff macht hier nichts aus: Alle ${fixed(p.number("finishes"), 0)} haken auf ${boards(p.number("boards"))} gleich. Lassen Sie die Oberfläche, wie sie ist, oder wählen Sie danach, wie lange sie hält.`,
  "message.coverAtLimit.duller": (p) =>
    `Diese Schale ist an ihrer Grenze: ${p.text("finish")} ist das Matteste, was sie annimmt, und die Chance steigt zum Matten hin noch (${inHundred(p.number("points"))} im letzten Schritt). Denken Sie an einen stärkeren Ball.`,
  "message.coverAtLimit.smoother": (p) =>
    `Diese Schale ist an ihrer Grenze: ${p.text("finish")} ist das Glatteste, was sie annimmt, und die Chance steigt zum Glatten hin noch (${inHundred(p.number("points"))} im letzten Schritt). Denken Sie an einen schwächeren Ball.`,
  "message.noLine.hooksTooMuch": (p) =>
    `Keine sinnvolle Linie: Mit jedem Schliff biegt dieser Ball mehr ab, als die Bahn Platz hat: selbst von ${line(p)} kommt er über die Gasse hinaus zurück. Eine schwächere Schale, mehr Geschwindigkeit oder weniger Achsrotation würden helfen; Schleifen nicht.`,
  "message.noLine.hooksTooLittle": (p) =>
    `Keine sinnvolle Linie: Mit jedem Schliff biegt dieser Ball zu wenig ab: von ${line(p)} kommt er nicht bis zur Gasse zurück. Eine stärkere Schale, weniger Geschwindigkeit oder weniger Öl würden helfen; Schleifen allein nicht.`,
  "message.noLine.limits": (p) =>
    `Keine Linie innerhalb der gegebenen Grenzen: von ${line(p)} kommt der Ball über die Gasse hinaus zurück. Weitere Grenzen fänden eine Linie; eine andere Oberfläche nicht.`,
  "message.noLine.tooSlow": () => "Keine Linie: Mit diesen Zahlen kommt der Ball nicht bis zu den Pins. Prüfen Sie Geschwindigkeit und Öl.",
  "message.noLine.scattered": (p) =>
    `Der Ball kommt in die Gasse, mit ${degrees(p.number("entryDeg"))}. Würfe, die bei diesem Winkel alle das beste Board träfen, wären in ${fixed(p.number("deadOnPercent"), 0)} von 100 Fällen ein Strike; diese streuen dafür zu sehr. Ruhigere Würfe oder mehr Drehung aus der Hand würden helfen; eine andere Oberfläche nicht.`,
  "message.backup": (p) =>
    `Ein Backup-Ball hakt zur eigenen Seite des Spielers und ist darum für die andere Gasse geplant: Alles hier zählt vom ${p.text("side") === "left" ? "linken" : "rechten"} Rand der Bahn.`,
  "message.slidesThrough": () =>
    "Mit keinem Schliff beginnt dieser Ball zu haken: Das Öl reicht bis hinten, und er rutscht bis zu den Pins. Daran ändert keine Oberfläche etwas.",
  "message.noTurn": () =>
    "Mit keinem Schliff hakt dieser Ball: Die Hand gibt ihm keine Drehung. Achsrotation würde helfen; eine andere Oberfläche nicht.",
  "message.outsideRuleBook": (p) =>
    `Beim Ball liegt außerhalb der Grenzen der Ausrüstungsregeln des Verbands: ${quantityWord(p.text("quantity"))}. Sehen Sie im geltenden Regelbuch nach, bevor er im Wettkampf gespielt wird.`,
  "message.onlyOne": (p) => `Nur nach ${p.text("finish")} wurde gefragt, darum gibt es nichts zu vergleichen.`,
  "message.todayIsAsGood": (p) =>
    `Der heutige Schliff ${p.text("today")} ist so gut, dass es keinen Unterschied macht: Ist er nicht abgenutzt, lassen Sie ihn.`,
  "message.lineAtLimit": (p) =>
    `Die beste Linie mit ${p.text("finish")}, ${line(p)}, liegt am Rand der Grenzen: Mit mehr Platz könnte es besser sein.`,
  "message.noMatterOfPins": (p) =>
    `Der Schliff macht hier keinen Unterschied: alle ${fixed(p.number("finishes"), 0)} räumen bis auf ${fixed(p.number("pins"), 2)} Pins gleich viel ab. Lassen Sie die Oberfläche, wie sie ist, oder wählen Sie danach, wie lange sie hält.`,
  "message.expectedPins": () => "Strikes sind hier zu selten, um Schliffe zu unterscheiden; gezählt werden die Pins des ersten Balls.",
  "message.leastHook": () => "Ein Spareball: Gesucht ist der kleinste Haken, nicht die meisten Strikes.",
  "message.coverUnknown": (p) =>
    `Die Schale ist nicht bekannt. Wir haben ${coversText(p.text("covers"))} gleichermaßen durchgerechnet, darum ist die Antwort weit.`,
  "message.finishUnknown": (p) =>
    `Der heutige Schliff ist nicht bekannt, darum wird nichts damit verglichen.${p.number("shots") > 0 ? ` Für das bisher verspielte Öl haben wir ${p.text("finish")} angenommen.` : ""}`,
  "message.rollsEarly": (p) =>
    `Mit jedem Schliff rollt dieser Ball schon bei ${feet(p.number("feet"))}: Für die Pins bleibt ihm nichts. Hier hilft ein schwächerer Ball, nicht eine andere Oberfläche.`,
  "message.measure.tenBalls": (p) =>
    `Das Messen lohnt: auf welchem Board zehn Bälle auf der heutigen Linie ankommen. Das brächte hier etwa ${inHundred(p.number("points"))}.`,
  "message.measure.trial": (p) =>
    `Das Messen lohnt: zehn Bälle auf einer Linie mit dem mattesten Schliff, zehn mit dem glattesten. Das brächte hier etwa ${inHundred(p.number("points"))}.`,
  "message.measure.speeds": (p) =>
    `Das Messen lohnt: Geschwindigkeit aus der Hand und an den Pins, zehn Bälle. Das brächte hier etwa ${inHundred(p.number("points"))}.`,
  "message.houseOtherWorlds": () =>
    "Was dieses Haus gelehrt hat, wurde mit einem älteren Satz von Welten gelernt; nur seine Mitte wird hier benutzt. Lerne noch einmal aus seinen Würfen.",
  "message.padReadings": (p) =>
    p.number("readings") === 1
      ? "Gewichtet nach einer Messung an einem Ball frisch von Ihrer Werkbank."
      : `Gewichtet nach ${fixed(p.number("readings"), 0)} Messungen an Bällen frisch von Ihrer Werkbank.`,
  "message.trialUnsaid": () =>
    "Kaum eine Welt sagt die Würfe des Versuchs; der Plan gilt ohne sie. Sieh nach, ob Bretter, Linie, Öl und Oberflächen die richtigen sind, ehe du dieser Wahl glaubst.",
  "message.readingsUnsaid": () =>
    "Kaum eine Welt sagt, was auf Ihrer Werkbank gemessen wurde; der Plan gilt ohne das. Sehen Sie nach, ob es Ra in µin ist und der Ball frisch vom genannten Pad kam, bevor Sie dieser Wahl glauben.",
  "message.houseLearned": (p) => `Berichtigt durch ${fixed(p.number("shots"), 0)} in diesem Haus gesehene Würfe.`,
  "message.leastChange": () =>
    "Ein Kontrollball: Gesucht ist die kleinste Änderung, während sich die Bahn ändert, nicht die meisten Strikes auf frischem Öl.",
  "reason.bestChance": (p) =>
    `${p.text("finish")} bringt ${fixed(p.number("chancePercent"), 0)} Strikes von 100 ersten Bällen über die Sitzung.`,
  "reason.leastHook": (p) => `${p.text("finish")} hakt am wenigsten: im Ganzen ${boards(p.number("boards"))}.`,
  "reason.pinsDown": (p) => `${p.text("finish")} räumt mit dem ersten Ball ${fixed(p.number("pins"), 1)} Pins ab.`,
  "reason.plateau": (p) => `Von ${p.text("from")} bis ${p.text("to")} ist es zu nah beieinander, um zu entscheiden.`,
  "reason.dullLoses": (p) => `Am matten Ende verliert ${p.text("finish")} ${inHundred(p.number("points"))}.`,
  "reason.smoothLoses": (p) => `Am glatten Ende verliert ${p.text("finish")} ${inHundred(p.number("points"))}.`,
  "reason.entryRises": (p) =>
    `Glatter kommt steiler: ${degrees(p.number("dullEntryDeg"))} mit ${p.text("dullFinish")}, ${degrees(p.number("smoothEntryDeg"))} mit ${p.text("smoothFinish")}.`,
  "reason.entryFalls": (p) =>
    `Glatter kommt hier flacher, weil der Ball noch rutscht: ${degrees(p.number("dullEntryDeg"))} mit ${p.text("dullFinish")}, ${degrees(p.number("smoothEntryDeg"))} mit ${p.text("smoothFinish")}.`,
  "reason.lessForgiving": (p) =>
    `Ein halbes Grad daneben kostet mit ${p.text("finish")} ${inHundred(p.number("points"))}, mit ${p.text("pickFinish")} ${inHundred(p.number("pickPoints"))}.`,
  "reason.slipLeft": (p) =>
    `${p.text("finish")} erreicht die Pins, während er noch mit ${metresPerSecond(p.number("slipMps"))} rutscht: Energie, die die Pins nicht bekommen.`,
  "reason.hookLater": (p) =>
    `Gegen den heutigen ${p.text("today")} beginnt ${p.text("finish")} ${feet(Math.abs(p.number("feet")))} später zu haken.`,
  "reason.hookEarlier": (p) =>
    `Gegen den heutigen ${p.text("today")} beginnt ${p.text("finish")} ${feet(Math.abs(p.number("feet")))} früher zu haken.`,
  "reason.todaysLineHigher": (p) =>
    `Auf der heutigen Linie trifft ${p.text("finish")} ${boards(Math.abs(p.number("boards")))} höher: gehen Sie zu ${line(p)}.`,
  "reason.todaysLineLighter": (p) =>
    `Auf der heutigen Linie trifft ${p.text("finish")} ${boards(Math.abs(p.number("boards")))} dünner: gehen Sie zu ${line(p)}.`,
  "reason.todayLoses": (p) => `Beim heutigen ${p.text("today")} zu bleiben kostet ${inHundred(p.number("points"))}.`,
  "why.smootherStillHooks": (p) =>
    `${p.text("pick")} hakt für diesen Spieler hier noch genug: ${degrees(p.number("entryDeg"))} Eintritt, und ein halbes Grad daneben kostet ${inHundred(p.number("points"))}.`,
  "why.dullerKeepsWindow": (p) =>
    `Ein halbes Grad daneben kostet diesen Spieler mit ${p.text("smoothFinish")} ${inHundred(p.number("points"))}, mit ${p.text("pick")} ${inHundred(p.number("pickPoints"))}.`,
  "why.exitBoard": (p) => `Die Linie, die taugt, verlässt das Öl bei Board ${fixed(p.number("exitBoard"), 1)}.`,
  "why.ordering": () =>
    "Jeder Schliff wird auf seiner eigenen besten Linie verglichen, und die Linien sind verschieden: Auf ein und derselben Linie gilt die Regel.",
  "why.plateauReaches": (p) =>
    `${p.text("pick")} ist nicht besser als das, was die Regel will: Die Schliffe, die zu nah beieinander liegen, reichen in ${p.text("from")} bis ${p.text("to")} hinein.`,
  "why.urethane": (p) =>
    `Die Rechnung will ${p.text("pick")}, weil sie annimmt, dass Urethan auf trockenen Boards stark greift; diese Zahl ist angepasst, nicht gemessen. Trauen Sie zuerst der Erfahrung der Werkstatt.`,
};
