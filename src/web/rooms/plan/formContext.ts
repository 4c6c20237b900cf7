import { createContext, useContext } from "react";
import type { PlanQuestion } from "#engine/planning/question";
import type { FieldProblem } from "../../client/protocol.ts";
import type { Draft } from "./useDraft.ts";

/** What the fields of the form share. */
export interface FormContent {
  readonly draft: Draft;
  readonly problems: readonly FieldProblem[];
  /** The question of the last answer: what was taken where nothing was entered. */
  readonly question: PlanQuestion | null;
}

export const FormContext = createContext<FormContent | null>(null);

export function useForm(): FormContent {
  const form = useContext(FormContext);
  if (form === null) throw new Error("A field of the plan stands outside its form.");
  return form;
}

/** The problem of a field, or of the pair or list it belongs to. */
export function problemAt(problems: readonly FieldProblem[], path: string): FieldProblem | undefined {
  const whole = path.replace(/\[\d+\]$/, "");
  return problems.find((p) => p.path === path) ?? problems.find((p) => p.path === whole || p.path.startsWith(`${path}[`));
}
