import type * as en from "../../en/rooms/planOfTicket.ts";
import type { Translated } from "../../translated.ts";

export const PLAN_OF_TICKET = {
  title: "Schliffplan",
  pageTitle: (ball) => `Schliffplan: ${ball}`,
  whom: (ball, bowler) => (bowler === null ? `Geplant für ${ball}, der niemandem gehört.` : `Geplant für ${bowler}, ${ball}.`),
  lane: "Die Bahn ist die übliche: Stellen Sie ein, wo der Ball gespielt wird.",
  laneOf: (pattern) => `Auf ${pattern}, wie es bei der Annahme gesagt wurde.`,
  asPlanned: (day) => `Spieler und Bahn wie im Plan vom ${day}`,
  notKnown: (what) => `Nicht verzeichnet, darum wird das Übliche genommen: ${what.join(", ")}.`,
  unknown: { delivery: "der Wurf", cover: "die Schale", finish: "der heutige Schliff", core: "der Kern" },
  startAgain: "Zurück zu den Aufzeichnungen",
  toTicket: "Zum Auftrag",
  finish: "Schliff für den Auftrag",
  isPick: (finish) => `${finish} (Wahl des Plans)`,
  noPick: "einen wählen",
  take: "Diesen Schliff in den Auftrag übernehmen",
  stopped:
    "Die Arbeit an diesem Ball ist angehalten: Der Schliff wird aufbewahrt, die Arbeit geschrieben, wenn er freigegeben und der Schliff neu gewählt ist.",
} as const satisfies Translated<typeof en.PLAN_OF_TICKET>;
