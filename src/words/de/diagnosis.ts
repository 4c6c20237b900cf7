import { type CauseId, isUnclear } from "#engine/learning/diagnosis/causes";
import type { SymptomId } from "#engine/learning/diagnosis/complaint";
import type { DiagnosisMessageId } from "#engine/learning/diagnosis/diagnose";
import type { Evidence, EvidenceId } from "#engine/learning/diagnosis/evidence";
import type { StepId } from "#engine/learning/diagnosis/nextSteps";
import { usefulnessOf } from "#engine/learning/usefulness";
import type * as en from "../en/diagnosis.ts";
import type { AnswerBySense } from "../en/diagnosis.ts";
import { Params, type Sentence } from "../params.ts";
import type { Translated } from "../translated.ts";
import { feet, fixed, signed } from "./figures.ts";
import { USEFULNESS } from "./usefulness.ts";

export const SYMPTOM_WORDS: Readonly<Record<SymptomId, string>> = {
  hooksEarlyHitsWeak: "Er hakt zu früh.",
  doesNothing: "Am Ende der Bahn tut er nichts.",
  skidsPast: "Er rutscht an der Stelle vorbei.",
  leavesCorner: "Er lässt den Eckpin stehen.",
  comesInHigh: "Er kommt zu hoch.",
  hooksLess: "Er hakt weniger als früher.",
  deflects: "Er trifft schwach: Die Pins lenken ihn ab.",
  neverTheSame: "Er läuft nie zweimal gleich.",
  spareBallHooks: "Der Spareball hakt.",
  knocks: "Er klopft oder klingt falsch.",
  looksShiny: "Er glänzt in der Laufspur.",
  feelsOily: "Er fühlt sich ölig an.",
};

export const CAUSE_WORDS: Readonly<Record<CauseId, string>> = {
  "lane.drier": "Die Bahnen sind trockener als sonst",
  "lane.oilier": "Auf den Bahnen liegt mehr Öl als sonst",
  "lane.transition": "Das Öl auf dieser Linie ist weggespielt",
  "release.slower": "Der Spieler wirft langsamer",
  "release.faster": "Der Spieler wirft schneller",
  "release.lessTurn": "Der Spieler dreht den Ball weniger",
  "release.tired": "Der Spieler ist müde",
  "release.grip": "Der Griff passt nicht",
  "ball.faded": "Der Schliff ist in der Laufspur verblasst",
  "ball.oilSoaked": "Die Schale ist voll Öl",
  "ball.dirty": "Die Schale ist schmutzig",
  "ball.tooDull": "Die Oberfläche ist dafür zu stumpf",
  "ball.tooSmooth": "Die Oberfläche ist dafür zu glatt",
  "ball.tooStrong": "Der Ball ist für diesen Spieler auf diesem Öl zu stark",
  "ball.tooWeak": "Der Ball ist für diesen Spieler auf diesem Öl zu schwach",
  "ball.unsuited": "Der Schliff passt nicht zu diesem Spieler auf diesem Öl",
  "ball.uneven": "Der Ball ist ungleich: ein Plug, eine flache Stelle, eine stärker bearbeitete Seite",
  "ball.crack": "Der Ball hat einen Riss, oder die Schale hat sich gelöst",
  "ball.spareWorn": "Die Schale des Spareballs ist stumpf geworden",
  "ball.tooLight": "Der Ball ist leicht, und die Pins lenken ihn ab",
  "pins.carry": "Nur das Fallen der Pins: Gute Treffer lassen hin und wieder einen stehen",
};

export const ANSWER_WORDS: Readonly<Record<CauseId, string | AnswerBySense>> = {
  "lane.drier": {
    less: "Nach innen gehen oder einen schwächeren Ball nehmen; die Oberfläche bleibt, wie sie ist.",
    more: "Eine andere Linie oder ein anderer Ball; die Oberfläche bleibt, wie sie ist.",
  },
  "lane.oilier": {
    more: "Nach außen gehen oder einen stärkeren Ball nehmen; die Oberfläche bleibt, wie sie ist.",
    less: "Eine andere Linie oder ein anderer Ball; die Oberfläche bleibt, wie sie ist.",
  },
  "lane.transition": {
    less: "Nach innen gehen oder einen schwächeren Ball nehmen.",
    more: "Nach außen gehen oder einen stärkeren Ball nehmen: Auf dieser Linie ist Öl nach hinten getragen.",
  },
  "release.slower": "Über einige Würfe messen; sehen, was sich im Anlauf geändert hat.",
  "release.faster": "Über einige Würfe messen; sehen, was sich im Anlauf geändert hat.",
  "release.lessTurn": "Den Abwurf filmen und mit früheren Zahlen vergleichen.",
  "release.tired": {
    less: "Ein glatterer oder schwächerer Ball oder eine Pause.",
    more: "Ein stumpferer oder stärkerer Ball oder eine Pause.",
  },
  "release.grip": "Passung, Klebeband und Einsätze ansehen.",
  "ball.faded": "Den Schliff erneuern, alle Seiten gleich.",
  "ball.oilSoaked": "Das Öl ausziehen, nicht wärmer, als der Hersteller erlaubt; danach den Schliff.",
  "ball.dirty": "Reinigen und nach jedem Wurf abwischen.",
  "ball.tooDull": "Ein glatterer Schliff; gibt es keinen, frische Politur oder ein schwächerer Ball.",
  "ball.tooSmooth": "Ein stumpferer Schliff.",
  "ball.tooStrong": "Ein anderer Ball; Schleifen allein macht ihn nicht schwach genug.",
  "ball.tooWeak": "Ein anderer Ball; Schleifen allein macht ihn nicht stark genug.",
  "ball.unsuited": { less: "Ein glatterer Schliff: siehe den Schliffplan.", more: "Ein stumpferer Schliff: siehe den Schliffplan." },
  "ball.uneven": "Plug und Oberfläche ebnen, dann alle Seiten gleich.",
  "ball.crack":
    "Halt: keine Drehmaschine, kein Pad, keine Wärme, nicht mehr werfen; fotografieren, und zuerst nach der Gewährleistung fragen.",
  "ball.spareWorn": "Wieder polieren.",
  "ball.tooLight": "Ein schwererer Ball, wenn der Spieler ihn halten kann: einen Trainer fragen.",
  "pins.carry": "Den Ball in Ruhe lassen.",
};

export const STEP_WORDS: Readonly<Record<StepId, string>> = {
  referenceBall: "Einen Ball, der sicher stimmt, auf derselben Linie werfen",
  askLaneMechanic: "Den Bahnmechaniker fragen, was sich geändert hat",
  timeTheBall: "Den Ball über einige Würfe messen und vergleichen",
  lookAtGrip: "Den Griff ansehen: Passung, Klebeband, Einsätze, den Daumen",
  wipe: "Den Ball mit einem trockenen Tuch abwischen und noch einmal werfen",
  clean: "Den Ball reinigen und noch einmal werfen",
  handPad: "An der Bahn von Hand mit einem Pad darübergehen und noch einmal werfen",
  finePad: "Von Hand mit einem feinen Pad an der Bahn darübergehen und wieder werfen",
  otherBall: "Einen anderen Ball der Tasche werfen",
  reading: "Messen: Laufspur, daneben, jede Seite",
  lookForCrack: "Unter einer Lampe nach einem Riss sehen und horchen, an Löchern und Plugs",
  spinForUneven: "Auf der Drehmaschine von Hand drehen und Plug und flache Stelle fühlen",
  extract: "Das Öl ausziehen",
  watchTenShots: "Zehn Würfen zusehen und notieren, was stehen bleibt",
};

export const STEP_OUTCOMES: Readonly<Record<StepId, readonly [yes: string, no: string]>> = {
  referenceBall: ["Er tut dasselbe", "Er läuft, wie er soll"],
  askLaneMechanic: ["Etwas hat sich geändert", "Nichts hat sich geändert"],
  timeTheBall: ["Es hat sich geändert", "Wie vorher"],
  lookAtGrip: ["Etwas stimmt daran nicht", "Er passt"],
  wipe: ["Es ist besser", "Nicht besser"],
  clean: ["Es ist besser", "Nicht besser"],
  handPad: ["Es ist besser", "Nicht besser"],
  finePad: ["Es ist besser", "Nicht besser"],
  otherBall: ["Der läuft richtig", "Nicht besser"],
  reading: ["Nicht, wie sie sein sollen", "Wie sie sein sollen"],
  lookForCrack: ["Da ist einer", "Keiner gefunden"],
  spinForUneven: ["Er ist ungleich", "Er ist gleichmäßig"],
  extract: ["Es ist besser", "Nicht besser"],
  watchTenShots: ["Gute Treffer lassen Pins stehen", "Die Treffer sind nicht gut"],
};

const EVIDENCE: Readonly<Record<EvidenceId, Sentence>> = {
  symptom: (p) => shiftText(p) ?? `„${symptomOf(p)}“ ist, was das tut`,
  notComplainedOf: () => "es würde sich auch anders zeigen, wovon niemand spricht",
  hit: (p) => `die Treffer sind ${HIT_WORDS[p.text("hits")] ?? p.text("hits")}`,
  allChanged: () => "alle Bälle haben sich geändert",
  onlyThisOne: () => "nur dieser Ball hat sich geändert",
  suddenly: () => "es kam plötzlich",
  slowly: () => "es kam langsam",
  always: () => "es war immer so",
  gamesFade: (p) => `${fixed(p.number("games"), 0)} Spiele haben die Rauheit der Laufspur um ${signed(p.number("percent"), 0)} % verändert`,
  gamesFadeLittle: (p) =>
    `${fixed(p.number("games"), 0)} Spiele haben die Rauheit der Laufspur kaum verändert (${signed(p.number("percent"), 0)} %)`,
  oilDue: (p) => `${fixed(p.number("games"), 0)} Spiele, seit Öl ausgezogen wurde`,
  oilNotDue: (p) => `erst ${fixed(p.number("games"), 0)} Spiele, seit Öl ausgezogen wurde, oder eine Schale, die keines aufnimmt`,
  trackSmoother: (p) => `die Laufspur misst ${fixed(p.number("track"), 0)} µin, daneben ${fixed(p.number("beside"), 0)}`,
  trackAlike: (p) => `Laufspur und daneben messen gleich (${fixed(p.number("track"), 0)} und ${fixed(p.number("beside"), 0)} µin)`,
  trackOtherWay: (p) =>
    `die Laufspur misst ${fixed(p.number("track"), 0)} µin, daneben ${fixed(p.number("beside"), 0)}: so verändern Spiele sie nicht`,
  crackFound: () => "ein Riss wurde gefunden",
  noCrackFound: () => "es wurde nachgesehen: Es gibt keinen Riss",
  hollow: () => "er klingt hohl",
  plugFound: () => "er hat einen Plug",
  flatSpot: () => "er hat eine flache Stelle",
  wornTrack: () => "die Laufspur ist abgenutzt",
  gripChanged: () => "der Griff wurde geändert",
  gripHurts: () => "der Griff schmerzt",
  gripSame: () => "der Griff ist, wie er war",
  tired: () => "wie müde der Spieler ist",
  speedMeasured: (p) => `die gemessene Geschwindigkeit hat sich um ${signed(p.number("mph"), 1)} mph geändert`,
  revsMeasured: (p) => `die gemessene Drehzahl hat sich um ${signed(p.number("rpm"), 0)} U/min geändert`,
  otherHouse: () => "es ist ein anderes Haus",
  laneKnown: () => "an den Bahnen hat sich, wie man weiß, etwas geändert",
  laneKnownSame: () => "an den Bahnen hat sich, wie man weiß, nichts geändert",
  manyShots: (p) => `${fixed(p.number("shots"), 0)} Würfe auf diesem Öl`,
  fewShots: (p) => `erst ${fixed(p.number("shots"), 0)} Würfe auf diesem Öl`,
  lightBall: (p) => `er wiegt ${fixed(p.number("lb"), 0)} lb`,
  notLight: (p) => `er wiegt ${fixed(p.number("lb"), 0)} lb`,
  freshlyWorked: (p) => `${fixed(p.number("games"), 0)} Spiele auf dem Schliff`,
  strongForOil: () => "die Schale für dieses Öl und diese Hand",
  weakForOil: () => "die Schale für dieses Öl und diese Hand",
  jobOfBall: () => "wofür der Ball in der Tasche ist",
  suits: (p) =>
    p.optionalNumber("points") === null
      ? "ob ein anderer Schliff besser wäre, lässt sich aus dem Bekannten nicht rechnen"
      : `kein Schliff trifft hier deutlich öfter (${p.text("finish")} um ${fixed(p.number("points"), 0)} von 100)`,
  doesNotSuit: (p) => `${p.text("finish")} träfe hier ${fixed(p.number("points"), 0)} von 100 öfter`,
};

const HIT_WORDS: Readonly<Record<string, string>> = { good: "gut", light: "zu leicht", high: "zu hoch" };

function symptomOf(p: Params): string {
  return Object.entries(SYMPTOM_WORDS).find(([id]) => id === p.text("symptom"))?.[1] ?? p.text("symptom");
}

function shiftText(p: Params): string | null {
  if (p.optionalNumber("boards") === null) return null;
  const parts = [
    Math.abs(p.number("hookFt")) < 0.3
      ? null
      : `hakt ${feet(Math.abs(p.number("hookFt")))} ${p.number("hookFt") < 0 ? "früher" : "später"}`,
    Math.abs(p.number("boards")) < 0.2
      ? null
      : `kommt ${fixed(Math.abs(p.number("boards")), 1)} Boards ${p.number("boards") > 0 ? "höher" : "leichter"}`,
    Math.abs(p.number("entryDeg")) < 0.1
      ? null
      : `läuft ${fixed(Math.abs(p.number("entryDeg")), 1)}° ${p.number("entryDeg") > 0 ? "steiler" : "flacher"} ein`,
  ].filter((part) => part !== null);
  const does = parts.length === 0 ? "das bewegt den Ball kaum" : `der Ball ${parts.join(", ")}`;
  return `${does} („${symptomOf(p)}“)`;
}

export function evidenceText({ id, params, from }: Evidence): string {
  return `${EVIDENCE[id](new Params({ id, params }))}${from === "model" ? DIAGNOSIS.byModel : ""}`;
}

export const DIAGNOSIS_SENTENCES: Readonly<Record<DiagnosisMessageId, Sentence>> = {
  "diagnosis.stopCrack": () =>
    "Halt: keine Drehmaschine, kein Pad, keine Wärme, nicht mehr werfen; fotografieren, und zuerst nach der Gewährleistung fragen.",
  "diagnosis.lookFirst": () =>
    "Er klopft oder klingt hohl: Vor allem anderen unter einer Lampe nach einem Riss suchen. Bis dahin keine Drehmaschine, kein Pad, keine Wärme.",
  "diagnosis.claimFirst": () => "Ein Gewährleistungsfall kann offen sein: Er wird geklärt, bevor am Ball etwas getan wird.",
  "diagnosis.noSandingAll": () => "Alle Bälle haben sich geändert: Deswegen wird kein Ball geschliffen.",
  "diagnosis.noSandingCrack": () => "Der Ball kann einen Riss haben: An seiner Oberfläche geschieht nichts, bis jemand nachgesehen hat.",
  "diagnosis.noSandingClaim": () => "An seiner Oberfläche geschieht nichts, solange ein Anspruch offen sein kann.",
  "diagnosis.unclear": () => "Noch sticht keine Ursache heraus: Erst der nächste Schritt, dann die Entscheidung.",
  "diagnosis.whileScoring": () =>
    "Solange gewertet wird, ist nur erlaubt, was unten steht; das Übrige wartet bis danach. Fragen Sie die Spielleitung, bevor etwas anderes als ein trockenes Tuch den Ball berührt.",
};

export const answerText: typeof en.answerText = ({ cause, mendedBy }) => {
  const answer: string | AnswerBySense = ANSWER_WORDS[cause];
  return typeof answer === "string" ? answer : answer[mendedBy ?? "less"];
};

export const customerText: typeof en.customerText = ({ causes, steps, answerTo }) => {
  const answered = causes.find(({ cause }) => cause === answerTo);
  if (answered?.cause === "ball.crack") return `${CAUSE_WORDS[answered.cause]}. ${answerText(answered)}`;
  if (answered !== undefined && !isUnclear(causes)) return `Am ehesten: ${CAUSE_WORDS[answered.cause]}. ${answerText(answered)}`;
  const next = steps.at(0);
  const look = "Wir wissen es noch nicht und sehen nach, bevor wir am Ball arbeiten.";
  return next === undefined ? `${look} Bis dahin geschieht nichts an ihm.` : `${look} Zuerst: ${STEP_WORDS[next.step]}.`;
};

export const DIAGNOSIS: Translated<typeof en.DIAGNOSIS> = {
  byModel: " [berechnet]",
  causes: "Was es sein kann",
  cause: (words, percent) => `${fixed(percent, 0).padStart(3)} von 100  ${words}`,
  speaksFor: "dafür",
  against: "dagegen",
  steps: "Der nächste Schritt, nach dem, was er für seine Zeit verrät",
  step: (words, minutes, nats) => `${words} (etwa ${fixed(minutes, 0)} min; ${USEFULNESS[usefulnessOf(nats)]})`,
  answer: "Wenn es das erste ist",
  customer: "Für den Kunden",
  chosen:
    "Die Aussichten beruhen auf Regeln des Fachs mit gewählten Faktoren und, wo es dabeisteht, auf dem Modell; siehe docs/model/diagnosis.md.",
};
