import { csvText } from "#contract/csv";
import type { BagPlan } from "#engine/planning/bag/bagPlan";
import { BAG_ROOM } from "#words/en/rooms/bag";

/** The stages as a table for other programs: figures bare, units in the headings. */
export function stagesCsv({ stages }: BagPlan): string {
  const rows = stages.map(({ game, part, ball, finish, asItLies, line, hookStartFt, entryAngleDeg, chance, oilMl }) => [
    game,
    part,
    ball,
    finish,
    asItLies ? BAG_ROOM.csvYes : BAG_ROOM.csvNo,
    line?.laydownBoard ?? null,
    line?.launchAngleDeg ?? null,
    hookStartFt,
    entryAngleDeg,
    chance.value,
    chance.low,
    chance.high,
    oilMl,
  ]);
  return csvText(BAG_ROOM.csv, rows);
}
