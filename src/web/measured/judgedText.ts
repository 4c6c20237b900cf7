import { MEASURE, PLACE_LABELS } from "#words/en/rooms/measure";
import { READ_ORDER } from "./entries.ts";
import type { Judged, OffSide } from "./judged.ts";

/** What is said of the sides: those that are off by name, the rest by their number. */
export function judgedText({ kind, read, off, rest, isSure, wanted }: Judged): string {
  if (kind === "more") return MEASURE.needMore(LEAST_SIDES - read.length);
  if (kind === "match") return MEASURE.match(read.length, READ_ORDER.length, wanted);
  if (kind === "cannotTell") return MEASURE.cannotTell(wanted);
  const others = read.length - off.length;
  const ways = [...new Set(off.map(({ way }) => way))];
  const said = ways.flatMap((way) => {
    const names = off.filter((one) => one.way === way).map(({ side }) => PLACE_LABELS[side]);
    return names.length === 0 ? [] : [MEASURE.off({ names, way, isSure, wanted, read: read.length, of: READ_ORDER.length })];
  });
  const ofOthers = rest === null ? MEASURE.others(others, wanted) : MEASURE.othersOff(others, rest, wanted);
  return [...said, ...(others === 0 ? [] : [ofOthers])].join(" ");
}

const LEAST_SIDES = 2;

/** The one to go back to first. */
export function worst({ off }: Judged): OffSide | null {
  return off[0] ?? null;
}
