import type { CautionId } from "#engine/rules/cautions";
import type { Sentence } from "../params.ts";

/** Cautions at the bench. The tool informs; the product's safety data sheet, the local code and a qualified person decide. */
export const CAUTION_SENTENCES: Readonly<Record<CautionId, Sentence>> = {
  lookFirst: () =>
    "Look the ball over first. A crack or a hollow sound: no spinner, no heat; photograph it and ask about the warranty. Photograph the serial number before it can be sanded away. Let a cold ball warm to the room.",
  spinner: () =>
    "Spinner: hair, sleeves and rings tied back or off, no gloves, eye protection. Stop it before the ball is turned. A ball weighs 6 to 16 lb: lift it close to the body. Ear protection from 85 dBA.",
  water: () => "Water near a motor: use a GFCI outlet.",
  dust: () =>
    "Sand wet where the abrasive allows it; else with extraction and a respirator (nuisance dust: 15 mg/m³ in all, 5 respirable).",
  floor: () => "Keep floor, shoes and approach dry and free of dust and polish: bowlers fall.",
  polish: () => "No polish in the thumb hole, no sharp bevels.",
  cleaner: () =>
    "Solvents such as isopropyl alcohol are highly flammable, and some soften covers: use only what the ball's maker and the rule book allow. Air the room, no flame, gloves, never on a turning spinner, and let the ball dry off before any heat.",
  heat: () =>
    "Heat draws oil out and can ruin the ball: never above the limit of its maker, and never above 140 °F (60 °C); from 130 °F (54 °C) on covers crack and cores come loose. Expect the warranty to end with it.",
  wetPaper: () =>
    "Wet paper only wet, with plenty of water and no weight on one place: dry it ruins the ball, pressed it makes a flat spot.",
  wholeSurface: () => "Prepare the whole surface alike, all six sides: sanding the track alone is against the equipment rules.",
  roughReading: () =>
    "Today's reading is above 50 µin, the limit at manufacture. It does not bind the owner, but an event's own rules may.",
  veryDull: () => "As dull as this, a fresh surface may read above what some events allow: measure before a tournament.",
  ruleBook: () => "In competition no abrasive once scoring has begun; what is allowed before it differs between rule books and events.",
};
