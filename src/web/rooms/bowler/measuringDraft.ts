import type { Bowler } from "#contract/records/bowler";
import type { Json } from "../../jobFile/jobDraft.ts";
import { bowlerOfJob } from "../../jobFile/jobOfTicket.ts";
import { figureOrNull } from "../../shop/typedValues.ts";
import type { Typed } from "../../shop/useEditing.ts";
import type { SpeedUnit } from "../../shop/zone.ts";

export type Clock = "frames" | "seconds";
export type SpeedBy = "display" | "timed";

/** One shot as it was typed; its fields by their places in the shot of a delivery file. What was typed one way stays while the other is looked at. */
export interface ShotTyped {
  readonly speedBy: SpeedBy;
  readonly timeIn: Clock;
  readonly turnsIn: Clock;
  /** Rows of the mark that are offered. */
  readonly marks: number;
  readonly typed: Typed;
}

export interface MeasuringDraft {
  /** Empty where it is not known. */
  readonly oil: string;
  /** By their places in the file's `camera`. */
  readonly camera: Typed;
  readonly shots: readonly ShotTyped[];
}

export const EMPTY_SHOT: ShotTyped = {
  speedBy: "display",
  timeIn: "frames",
  turnsIn: "frames",
  marks: 3,
  typed: { "display.atFt": "60", "timed.fromFt": "0", "timed.toFt": "60" },
};

export const EMPTY_MEASURING: MeasuringDraft = {
  oil: "",
  camera: { framesPerSecond: "240", frameWithin: "1", downDeg: "8", markWithin: "0.04", launchAngleDeg: "0" },
  shots: [EMPTY_SHOT],
};

export const MARK_PLACES = ["frame", "right", "up"] as const;
export const KNOWN_PLACES = ["overIn", "upIn", "right", "up"] as const;
const KNOWN_ROWS = [0, 1];

/** The delivery file that the form stands for; null while nothing of any shot is typed. */
export function deliveryFileOf(draft: MeasuringDraft, bowler: Bowler, unit: SpeedUnit): Json | null {
  const shots = draft.shots.map((shot) => shotOf(shot, unit));
  if (shots.every((shot) => Object.keys(shot).length === 0)) return null;
  return {
    gritwright: 1,
    bowler: bowlerOfJob(bowler),
    ...(draft.oil === "" ? {} : { lane: { pattern: draft.oil } }),
    camera: Object.fromEntries(
      Object.entries(draft.camera).flatMap(([key, text]) => (text.trim() === "" ? [] : [[key, figureOrNull(text)]])),
    ),
    shots,
  };
}

/** Whether anything was typed for a shot. */
export function isTyped(shot: ShotTyped): boolean {
  return Object.entries(shot.typed).some(([key, text]) => text !== (EMPTY_SHOT.typed[key] ?? ""));
}

function shotOf(shot: ShotTyped, unit: SpeedUnit): { readonly [key: string]: Json } {
  const text = (path: string) => (shot.typed[path] ?? "").trim();
  const figure = (path: string) => figureOrNull(text(path));
  const row = (path: string, places: readonly string[]) => Object.fromEntries(places.map((place) => [place, figure(`${path}.${place}`)]));
  const hasAny = (path: string, places: readonly string[]) => places.some((place) => text(`${path}.${place}`) !== "");
  const time = `timed.${shot.timeIn}`;
  const turnsTime = `turns.${shot.turnsIn}`;
  // A row in the middle that was left empty is a slip; rows at the end are only offered.
  const rows = Array.from({ length: shot.marks }, (_, i) => i);
  const last = rows.findLastIndex((i) => hasAny(`marks[${i}]`, MARK_PLACES));
  return {
    ...(shot.speedBy === "timed" && text(time) !== ""
      ? { timed: { ...row("timed", ["fromFt", "toFt"]), [shot.timeIn]: figure(time) } }
      : {}),
    ...(shot.speedBy === "display" && text("display.speedMph") !== ""
      ? { display: { speedMph: inMph(figure("display.speedMph"), unit), atFt: figure("display.atFt") } }
      : {}),
    ...(text("turns.turns") !== "" || text(turnsTime) !== ""
      ? { turns: { turns: figure("turns.turns"), [shot.turnsIn]: figure(turnsTime) } }
      : {}),
    ...(last < 0 ? {} : { marks: rows.slice(0, last + 1).map((i) => row(`marks[${i}]`, MARK_PLACES)) }),
    ...(KNOWN_ROWS.some((i) => hasAny(`known[${i}]`, KNOWN_PLACES))
      ? { known: KNOWN_ROWS.map((i) => row(`known[${i}]`, KNOWN_PLACES)) }
      : {}),
  };
}

/** What is no figure goes out as it was typed. */
function inMph(figure: number | null, unit: SpeedUnit): number | null {
  return typeof figure === "number" ? unit.mph(figure) : figure;
}
