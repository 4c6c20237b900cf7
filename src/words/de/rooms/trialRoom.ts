import { fixed } from "../../figures.ts";

export const TRIAL_ROOM = {
  head: (dull: string, smooth: string) => `Zehn Würfe mit ${dull}, zehn mit ${smooth}, ein Ball, eine Linie`,
  why: "Wo sie ankommen, sagt mehr über diesen Ball auf diesen Bahnen als alles andere, was ein Laden messen kann. Der ganze Plan wird dann danach gewichtet.",
  lineHead: "Die Linie",
  noLine:
    "Eine Leiste sagt nichts ohne die Linie, auf der geworfen wurde. Trag sie im Formular ein, oder nimm die, die der Plan heute spielt.",
  takeLine: (laydown: number, launch: string) => `Die des Plans spielen: aufgesetzt auf ${fixed(laydown, 1)}, ${launch}`,
  onLine: (laydown: number, launch: string) =>
    `Jeder Wurf wird auf Leiste ${fixed(laydown, 1)} aufgesetzt, ${launch}. Nicht umstellen, was der Ball auch tut.`,
  lane: "Alle auf einer Bahn, bald nacheinander, bevor andere sie gespielt haben.",
  finish: "Oberfläche",
  count: (done: number, of: number) => `${done} von ${of}`,
  board: "Leiste an den Pins",
  speed: "Tempo, mph",
  reading: "Leiste gelesen",
  readings: { "0.3": "aus einem Video", "0.5": "mit dem Auge, auf eine halbe Leiste", "1": "mit dem Auge, auf eine Leiste" },
  add: "Wurf eintragen",
  notABoard: "eine Leiste von 0 bis 40",
  notASpeed: "3 bis 40 mph, oder nichts",
  shots: "Bisherige Würfe",
  takeAway: (board: number) => `Den Wurf auf Leiste ${fixed(board, 1)} wegnehmen`,
  shot: (board: number, speed: number | null) => `${fixed(board, 1)}${speed === null ? "" : ` · ${fixed(speed, 1)} mph`}`,
  between: (finish: string) =>
    `Jetzt bekommt der Ball ${finish}: alle sechs Seiten, trocken und sauber. Die Vorsicht des Plans gilt auch hier; nie schleifen oder polieren, wenn schon gewertet wird.`,
  picture: "Wo sie ankamen",
  pictureName: (finish: string, seen: string, before: string, after: string) =>
    `${finish}: angekommen auf ${seen}; die Welten hatten vorher ${before}, jetzt ${after}`,
  key: { before: "die Welten vorher", after: "die Welten jetzt", seen: "Mittel der Würfe" },
  axis: "Leiste an den Pins",
  counts: (before: number, after: number, furtherNights: boolean) =>
    furtherNights
      ? `Vor diesen Würfen zählten ${fixed(before, 0)} Welten. Wenige von ihnen sagen, was gesehen wurde; darum ist jede auch in weiteren Nächten gefragt: von diesen zählen ${fixed(after, 0)}.`
      : `Vor diesen Würfen zählten ${fixed(before, 0)} Welten; nach ihnen gewogen zählen sie wie ${fixed(after, 0)}.`,
  thin: "Wenige Welten sagen es: sieh nach, ob Ball, Linie und Bahn die sind, die gespielt wurden, und nimm den Plan als grob.",
  toPlan: "Den Plan damit ansehen",
  save: "Den Versuch als Datei sichern",
  clear: "Alle Würfe wegnehmen",
  working: "Wird an die Welten gehalten",
} as const;
