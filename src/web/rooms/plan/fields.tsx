import { useState } from "react";
import { Input, Label, Text, TextField } from "react-aria-components";
import { PLAN_FORM } from "#words/en/screens";
import { problemAt, useForm } from "./formContext.ts";
import { readNumber, valueAt } from "./jobDraft.ts";

interface FieldProps {
  readonly path: string;
  readonly label: string;
  readonly help?: string;
}

/** Text of a value as it would be typed. */
function typedText(value: unknown): string {
  return value === undefined || value === null ? "" : String(value);
}

/** What stands beside a field: what is wrong and what is allowed, else a help. */
function FieldNotes({ path, help }: { readonly path: string; readonly help: string | undefined }) {
  const problem = problemAt(useForm().problems, path);
  return (
    <>
      {problem !== undefined && (
        <Text slot="errorMessage" className="field-problem">
          {PLAN_FORM.allowed(problem.value, problem.allowed)}
        </Text>
      )}
      {help !== undefined && (
        <Text slot="description" className="field-help">
          {help}
        </Text>
      )}
    </>
  );
}

/** A number with its unit. What was typed stays as typed; empty means that the usual value is taken, which is shown. */
export function NumberEntry({ path, label, unit, help }: FieldProps & { readonly unit: string }) {
  const { draft, problems, question } = useForm();
  const value = valueAt(draft.job, path);
  const [typed, setTyped] = useState(typedText(value));
  // A value changed from elsewhere (undo, an opened file) replaces the text; the field's own value keeps "17." as typed.
  const shown = readNumber(typed) === (value ?? undefined) ? typed : typedText(value);
  const taken = valueAt(question, path);
  return (
    <TextField
      className="field"
      value={shown}
      isInvalid={problemAt(problems, path) !== undefined}
      onChange={(text) => {
        setTyped(text);
        draft.set(path, readNumber(text));
      }}
    >
      <Label>{label}</Label>
      <span className="entry">
        <Input inputMode="decimal" autoComplete="off" placeholder={typeof taken === "number" ? PLAN_FORM.taken(String(taken)) : ""} />
        {unit !== "" && <span className="unit">{unit}</span>}
      </span>
      <FieldNotes path={path} help={help} />
    </TextField>
  );
}

/** A line of text; empty means that nothing was entered. */
export function TextEntry({ path, label, help }: FieldProps) {
  const { draft, problems } = useForm();
  return (
    <TextField
      className="field"
      value={typedText(valueAt(draft.job, path))}
      isInvalid={problemAt(problems, path) !== undefined}
      onChange={(text) => draft.set(path, text === "" ? undefined : text)}
    >
      <Label>{label}</Label>
      <Input autoComplete="off" />
      <FieldNotes path={path} help={help} />
    </TextField>
  );
}

/** One of a few words; an empty one means that nobody knows. The browser's own list: it is the best there is on a phone, and by keyboard. */
export function ChoiceEntry({
  path,
  label,
  help,
  words,
  fallback,
}: FieldProps & { readonly words: Readonly<Record<string, string>>; readonly fallback: string }) {
  const { draft, problems } = useForm();
  const value = typedText(valueAt(draft.job, path) ?? fallback);
  const problem = problemAt(problems, path);
  const id = `choice-${path}`;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onChange={({ target }) => draft.set(path, target.value === "" ? undefined : target.value)}
      >
        {!(value in words) && <option value={value}>{value}</option>}
        {Object.entries(words).map(([word, text]) => (
          <option key={word} value={word}>
            {text}
          </option>
        ))}
      </select>
      {problem !== undefined && (
        <span id={`${id}-problem`} className="field-problem">
          {PLAN_FORM.allowed(problem.value, problem.allowed)}
        </span>
      )}
      {help !== undefined && <span className="field-help">{help}</span>}
    </div>
  );
}
