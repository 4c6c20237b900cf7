import type { FieldProblem } from "#contract/routes/problemDocument";
import { EDITING } from "#words/en/rooms/pieces";
import type { ShopFault } from "../shop/shopClient.ts";
import type { Editing, Typed } from "../shop/useEditing.ts";
import { WriteFault } from "../shop/WriteFault.tsx";
import { LineField, WordField, WordsField } from "./PlainFields.tsx";

/** One field of a form. */
export interface EditField {
  /** Its place in the thing that is written, which is how the server names what it refuses. */
  readonly path: string;
  readonly label: string;
  /** What may be chosen; without it the field is typed. */
  readonly words?: Readonly<Record<string, string>>;
  readonly as?: "lines" | "number" | "date" | "tel" | "email";
  readonly help?: string;
}

interface FieldsProps {
  readonly fields: readonly EditField[];
  readonly typed: Typed;
  /** What the server refused, by field. */
  readonly problems: readonly FieldProblem[];
  onSet(path: string, value: string): void;
}

/** Fields one beside the other as there is room; what is wrong with one stands beside it. */
export function EditFields({ fields, typed, problems, onSet }: FieldsProps) {
  return (
    <div className="field-row">
      {fields.map((field) => (
        <OneField
          key={field.path}
          field={field}
          value={typed[field.path] ?? ""}
          problem={problems.find(({ path }) => path === field.path)?.message}
          onChange={(value) => onSet(field.path, value)}
        />
      ))}
    </div>
  );
}

interface OneProps {
  readonly field: EditField;
  readonly value: string;
  readonly problem: string | undefined;
  onChange(value: string): void;
}

function OneField({ field: { label, words, as, help }, value, problem, onChange }: OneProps) {
  const common = { label, value, problem, onChange, ...(help === undefined ? {} : { help }) };
  if (words !== undefined) return <WordField {...common} words={words} />;
  if (as === "lines") return <WordsField {...common} />;
  if (as === "number") return <LineField {...common} inputMode="decimal" />;
  return <LineField {...common} type={as ?? "text"} />;
}

/** What the server refused of a form's own fields; empty where the fault has no field to stand beside. */
export function problemsBeside(error: ShopFault | null, fields: readonly EditField[]): readonly FieldProblem[] {
  return error?.fields.filter(({ path }) => fields.some((field) => field.path === path)) ?? [];
}

interface FormProps {
  readonly fields: readonly EditField[];
  readonly editing: Editing & { readonly typed: Typed };
}

/** A form over a thing that is there, with both versions where somebody else was quicker. */
export function EditForm({ fields, editing }: FormProps) {
  const { typed, theirs, error } = editing;
  const named = problemsBeside(error, fields);
  return (
    <form
      className="edit-form"
      onSubmit={(event) => {
        event.preventDefault();
        editing.keep();
      }}
    >
      <EditFields fields={fields} typed={typed} problems={named} onSet={editing.set} />
      {theirs === null ? (
        <>
          {named.length === 0 && <WriteFault error={error} />}
          <div className="buttons">
            <button type="submit" className="button primary" disabled={editing.isBusy}>
              {EDITING.keep}
            </button>
            <button type="button" className="button" disabled={editing.isBusy} onClick={editing.leave}>
              {EDITING.leave}
            </button>
          </div>
        </>
      ) : (
        <BothVersions fields={fields} mine={typed} theirs={theirs} editing={editing} />
      )}
    </form>
  );
}

interface BothProps {
  readonly fields: readonly EditField[];
  readonly mine: Typed;
  readonly theirs: Typed;
  readonly editing: Editing;
}

function BothVersions({ fields, mine, theirs, editing }: BothProps) {
  const shown = ({ words }: EditField, value = "") => words?.[value] ?? (value === "" ? EDITING.empty : value);
  return (
    <div role="alert" className="failed both-versions">
      <p>{EDITING.quicker}</p>
      <table className="stages">
        <thead>
          <tr>
            <td />
            <th scope="col">{EDITING.mine}</th>
            <th scope="col">{EDITING.theirs}</th>
          </tr>
        </thead>
        <tbody>
          {fields
            .filter(({ path }) => mine[path] !== theirs[path])
            .map((field) => (
              <tr key={field.path}>
                <th scope="row">{field.label}</th>
                <td>{shown(field, mine[field.path])}</td>
                <td>{shown(field, theirs[field.path])}</td>
              </tr>
            ))}
        </tbody>
      </table>
      <div className="buttons">
        <button type="button" className="button" disabled={editing.isBusy} onClick={editing.keepMine}>
          {EDITING.keepMine}
        </button>
        <button type="button" className="button" disabled={editing.isBusy} onClick={editing.leave}>
          {EDITING.keepTheirs}
        </button>
      </div>
    </div>
  );
}
