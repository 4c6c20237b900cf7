import { OIL } from "#words/en/rooms/lanes";
import { PATTERN_WORDS } from "#words/en/screens";
import { OneOf } from "../../pieces/OneOf.tsx";
import { LineField, WordField, WordsField } from "../../pieces/PlainFields.tsx";
import { newKey } from "../../shop/shopClient.ts";
import { emptyPass, type OilDraft, type PassDraft } from "./oilDraft.ts";

interface OilFormProps {
  readonly draft: OilDraft;
  readonly problems: Readonly<Record<string, string>>;
  onChange(draft: OilDraft): void;
}

/** A pattern written down by name, row by row as on the machine's sheet, or place by place as it was measured. */
export function OilForm({ draft, problems, onChange }: OilFormProps) {
  const set = (change: Partial<OilDraft>) => onChange({ ...draft, ...change });
  return (
    <>
      <LineField label={OIL.name} value={draft.name} onChange={(name) => set({ name })} />
      <OneOf label={OIL.kind} value={draft.kind} words={OIL.kinds} onChange={(kind) => set({ kind })} />
      {draft.kind === "pattern" ? (
        <WordField label={OIL.named} value={draft.named} words={PATTERN_WORDS} onChange={(named) => set({ named })} />
      ) : (
        <>
          <p className="note">{OIL.fromRight}</p>
          <div className="field-row">
            <LineField
              label={OIL.sheetLength}
              inputMode="decimal"
              value={draft.lengthFt}
              problem={typedProblem(draft.lengthFt, problems.lengthFt)}
              onChange={(lengthFt) => set({ lengthFt })}
            />
            {draft.kind === "oilSheet" ? (
              <Stated draft={draft} problems={problems} onChange={onChange} />
            ) : (
              <WordField label={OIL.unit} value={draft.unit} words={OIL.units} onChange={(unit) => set({ unit })} />
            )}
          </div>
          {draft.kind === "oilSheet" ? (
            <Passes draft={draft} problems={problems} onChange={onChange} />
          ) : (
            <WordsField
              label={OIL.points}
              help={OIL.pointsHelp}
              value={draft.points}
              problem={typedProblem(draft.points, problems.points)}
              onChange={(points) => set({ points })}
            />
          )}
        </>
      )}
    </>
  );
}

/** An empty field is not wrong yet. */
function typedProblem(typed: string, problem: string | undefined): string | undefined {
  return typed.trim() === "" ? undefined : problem;
}

function Stated({ draft, problems, onChange }: OilFormProps) {
  return (
    <>
      <LineField
        label={OIL.statedMl}
        inputMode="decimal"
        value={draft.statedMl}
        problem={problems.statedMl}
        onChange={(statedMl) => onChange({ ...draft, statedMl })}
      />
      <LineField
        label={OIL.statedRatio}
        inputMode="decimal"
        value={draft.statedRatio}
        problem={problems.statedRatio}
        onChange={(statedRatio) => onChange({ ...draft, statedRatio })}
      />
    </>
  );
}

function Passes({ draft, problems, onChange }: OilFormProps) {
  const put = (passes: readonly PassDraft[]) => onChange({ ...draft, passes });
  return (
    <>
      <ol className="passes">
        {draft.passes.map((pass, i) => (
          <li key={pass.key}>
            <OnePass
              pass={pass}
              number={i + 1}
              problems={problems}
              onChange={(next) => put(draft.passes.map((one) => (one.key === pass.key ? next : one)))}
            />
            {draft.passes.length > 1 && (
              <button
                type="button"
                className="button"
                aria-label={OIL.removeRow(i + 1)}
                onClick={() => put(draft.passes.filter(({ key }) => key !== pass.key))}
              >
                ×
              </button>
            )}
          </li>
        ))}
      </ol>
      <button type="button" className="button" onClick={() => put([...draft.passes, nextPass(draft.passes)])}>
        {OIL.addRow}
      </button>
    </>
  );
}

/** A sheet goes on where the row before ended, in the same direction. */
function nextPass(passes: readonly PassDraft[]): PassDraft {
  const last = passes.at(-1);
  return last === undefined ? emptyPass(newKey()) : { ...emptyPass(newKey()), direction: last.direction, fromFt: last.toFt };
}

const COLUMNS = [
  ["fromBoard", OIL.fromBoard],
  ["toBoard", OIL.toBoard],
  ["times", OIL.times],
  ["perBoardMicrolitres", OIL.perBoard],
  ["fromFt", OIL.fromFt],
  ["toFt", OIL.toFt],
] as const;

interface OnePassProps {
  readonly pass: PassDraft;
  readonly number: number;
  readonly problems: Readonly<Record<string, string>>;
  onChange(pass: PassDraft): void;
}

function OnePass({ pass, number, problems, onChange }: OnePassProps) {
  return (
    <fieldset className="pass">
      <legend>{OIL.row(number)}</legend>
      <WordField
        label={OIL.direction}
        value={pass.direction}
        words={OIL.directions}
        onChange={(direction) => onChange({ ...pass, direction })}
      />
      {COLUMNS.map(([field, label]) => (
        <LineField
          key={field}
          label={label}
          inputMode="decimal"
          value={pass[field]}
          problem={typedProblem(pass[field], problems[`passes.${number - 1}.${field}`])}
          onChange={(value) => onChange({ ...pass, [field]: value })}
        />
      ))}
    </fieldset>
  );
}
