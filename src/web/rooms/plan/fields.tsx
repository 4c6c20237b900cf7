import { useState } from "react";
import { PLAN_FORM } from "#words/en/screens";
import { readNumber, valueAt } from "../../jobFile/jobDraft.ts";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { typedOf } from "../../shop/typedValues.ts";
import { problemAt, useForm } from "./formContext.ts";

interface FieldProps {
  readonly path: string;
  readonly label: string;
  readonly help?: string;
}

/** What is wrong with a field of the job and what is allowed; undefined where nothing is. */
export function useProblem(path: string): string | undefined {
  const problem = problemAt(useForm().problems, path);
  return problem === undefined ? undefined : PLAN_FORM.allowed(problem.value, problem.allowed);
}

/** Text of a value as it would be typed. */
function typedText(value: unknown): string {
  return typedOf(value as string | number | null | undefined);
}

/** A number with its unit. What was typed stays as typed; empty means that the usual value is taken, which is shown. */
export function NumberEntry({ path, unit, ...field }: FieldProps & { readonly unit: string }) {
  const { draft, question } = useForm();
  const value = valueAt(draft.job, path);
  const [typed, setTyped] = useState(typedText(value));
  // A value changed from elsewhere (undo, an opened file) replaces the text; the field's own value keeps "17." as typed.
  const shown = readNumber(typed) === (value ?? undefined) ? typed : typedText(value);
  const taken = valueAt(question, path);
  return (
    <LineField
      {...field}
      inputMode="decimal"
      unit={unit}
      value={shown}
      problem={useProblem(path)}
      placeholder={typeof taken === "number" ? PLAN_FORM.taken(String(taken)) : ""}
      onChange={(text) => {
        setTyped(text);
        draft.set(path, readNumber(text));
      }}
    />
  );
}

/** A line of text; empty means that nothing was entered. */
export function TextEntry({ path, ...field }: FieldProps) {
  const { draft } = useForm();
  return (
    <LineField
      {...field}
      value={typedText(valueAt(draft.job, path))}
      problem={useProblem(path)}
      onChange={(text) => draft.set(path, text === "" ? undefined : text)}
    />
  );
}

interface ChoiceProps extends FieldProps {
  readonly words: Readonly<Record<string, string>>;
  readonly fallback: string;
}

/** One of a few words; an empty one means that nobody knows. */
export function ChoiceEntry({ path, fallback, ...field }: ChoiceProps) {
  const { draft } = useForm();
  return (
    <WordField
      {...field}
      value={typedText(valueAt(draft.job, path) ?? fallback)}
      problem={useProblem(path)}
      onChange={(word) => draft.set(path, word === "" ? undefined : word)}
    />
  );
}
