import { useId } from "react";
import { type DiscMark, markDisc } from "#drawing/markDisc";
import { MEASURING } from "#words/en/rooms/measuring";
import type { FieldProblem } from "../../client/protocol.ts";
import { type EditField, EditFields } from "../../pieces/EditForm.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { Picture } from "../../pieces/Picture.tsx";
import { figureOrNull } from "../../shop/typedValues.ts";
import { useSpeed } from "../../shop/zone.ts";
import { KNOWN_PLACES, MARK_PLACES, type ShotTyped } from "./measuringDraft.ts";

interface ShotProps {
  readonly number: number;
  readonly shot: ShotTyped;
  /** By their places in the shot. */
  readonly problems: readonly FieldProblem[];
  onChange(shot: ShotTyped): void;
  /** Null for the only one. */
  readonly onRemove: (() => void) | null;
}

/** What was seen of one shot; each part may be left empty. */
export function MeasuringShot({ number, shot, problems, onChange, onRemove }: ShotProps) {
  const unit = useSpeed().unit;
  const set = (change: Partial<ShotTyped>) => onChange({ ...shot, ...change });
  const parts = { speed: speedFields(shot, unit), turns: turnFields(shot), marks: markFields(shot), known: KNOWN_FIELDS };
  const paths = Object.values(parts).flatMap((fields) => fields.map(({ path }) => path));
  const row = (fields: readonly EditField[]) => (
    <EditFields
      fields={fields}
      typed={shot.typed}
      problems={problems.map((problem) => ({ ...problem, message: problem.allowed }))}
      onSet={(path, value) => set({ typed: { ...shot.typed, [path]: value } })}
    />
  );
  return (
    <fieldset className="measuring-shot">
      <legend>{MEASURING.shot(number)}</legend>
      <OneOf label={MEASURING.speedBy} value={shot.speedBy} words={MEASURING.speedBys} onChange={(speedBy) => set({ speedBy })} />
      {shot.speedBy === "timed" && (
        <OneOf label={MEASURING.clock} value={shot.timeIn} words={MEASURING.clocks} onChange={(timeIn) => set({ timeIn })} />
      )}
      {row(parts.speed)}
      <OneOf label={MEASURING.turnsClock} value={shot.turnsIn} words={MEASURING.clocks} onChange={(turnsIn) => set({ turnsIn })} />
      {row(parts.turns)}
      <Marks shot={shot} row={row} fields={parts.marks} onMore={() => set({ marks: shot.marks + 1 })} />
      <details className="add-stop measuring-known">
        <summary>
          {MEASURING.known}: {MEASURING.knownSummary}
        </summary>
        {row(KNOWN_FIELDS.slice(0, KNOWN_PLACES.length))}
        {row(KNOWN_FIELDS.slice(KNOWN_PLACES.length))}
      </details>
      {problems
        .filter(({ path }) => !paths.includes(path))
        .map(({ path, allowed }) => (
          <p key={`${path} ${allowed}`} className="field-problem">
            {path === "" ? "" : `${path}: `}
            {allowed}
          </p>
        ))}
      {onRemove !== null && (
        <button type="button" className="button" onClick={onRemove}>
          {MEASURING.removeShot(number)}
        </button>
      )}
    </fieldset>
  );
}

interface MarksProps {
  readonly shot: ShotTyped;
  readonly fields: readonly EditField[];
  row(fields: readonly EditField[]): React.ReactNode;
  onMore(): void;
}

const MOST_MARKS = 20;

/** One mark in several pictures, and where it lies on the ball's disc. */
function Marks({ shot, fields, row, onMore }: MarksProps) {
  const id = useId();
  const seen = placesTyped(shot, "marks", shot.marks);
  const rows = Array.from({ length: shot.marks }, (_, i) => fields.slice(MARK_PLACES.length * i, MARK_PLACES.length * (i + 1)));
  return (
    <details className="add-stop">
      <summary>
        {MEASURING.marks}: {MEASURING.marksSummary(seen.length)}
      </summary>
      <div className="measuring-marks">
        <div>
          {rows.map((one) => (
            <div key={one[0].path}>{row(one)}</div>
          ))}
          {shot.marks < MOST_MARKS && (
            <button type="button" className="button" onClick={onMore}>
              {MEASURING.addMark}
            </button>
          )}
        </div>
        <Picture svg={markDisc(seen, placesTyped(shot, "known", 2), id)} className="mark-disc" />
      </div>
    </details>
  );
}

/** The places that have been typed whole so far. */
function placesTyped({ typed }: ShotTyped, list: "marks" | "known", rows: number): readonly DiscMark[] {
  return Array.from({ length: rows }, (_, i) => i).flatMap((i) => {
    const [right, up] = (["right", "up"] as const).map((place) => figureOrNull(typed[`${list}[${i}].${place}`] ?? ""));
    return typeof right === "number" && typeof up === "number" ? [{ right, up }] : [];
  });
}

function speedFields({ speedBy, timeIn }: ShotTyped, unit: string): readonly EditField[] {
  if (speedBy === "display")
    return [
      { path: "display.speedMph", label: MEASURING.displaySpeed(unit), as: "number" },
      { path: "display.atFt", label: MEASURING.displayAt, as: "number" },
    ];
  return [
    { path: "timed.fromFt", label: MEASURING.fromFt, as: "number" },
    { path: "timed.toFt", label: MEASURING.toFt, as: "number" },
    { path: `timed.${timeIn}`, label: MEASURING.took[timeIn], as: "number" },
  ];
}

function turnFields({ turnsIn }: ShotTyped): readonly EditField[] {
  return [
    { path: "turns.turns", label: MEASURING.turns, as: "number" },
    { path: `turns.${turnsIn}`, label: MEASURING.turnsTook[turnsIn], as: "number" },
  ];
}

const MARK_LABELS = { frame: MEASURING.markFrame, right: MEASURING.markRight, up: MEASURING.markUp };

function markFields({ marks }: ShotTyped): readonly EditField[] {
  return Array.from({ length: marks }, (_, i) =>
    MARK_PLACES.map((place) => ({ path: `marks[${i}].${place}`, label: MARK_LABELS[place](i + 1), as: "number" as const })),
  ).flat();
}

const KNOWN_LABELS = {
  overIn: MEASURING.knownOver,
  upIn: MEASURING.knownUp,
  right: MEASURING.knownSeenRight,
  up: MEASURING.knownSeenUp,
};

const KNOWN_FIELDS: readonly EditField[] = [0, 1].flatMap((i) =>
  KNOWN_PLACES.map((place) => ({ path: `known[${i}].${place}`, label: KNOWN_LABELS[place](i + 1), as: "number" as const })),
);
