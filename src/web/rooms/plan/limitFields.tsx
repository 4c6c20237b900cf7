import { useState } from "react";
import { Input, Label, Text, TextField } from "react-aria-components";
import { PLAN_FORM } from "#words/en/screens";
import { problemAt, useForm } from "./formContext.ts";
import { type Json, readNumber, valueAt } from "./jobDraft.ts";

/** Finishes to compare, as one line of text: `1000, 2000, 2000 + polish`. */
export function CandidatesEntry() {
  const { draft, problems } = useForm();
  const value = valueAt(draft.job, "candidates");
  const written = Array.isArray(value) ? value.join(", ") : "";
  const [typed, setTyped] = useState(written);
  const isOwn = JSON.stringify(listOf(typed) ?? []) === JSON.stringify(value ?? []);
  const problem = problemAt(problems, "candidates");
  return (
    <TextField
      className="field"
      value={isOwn ? typed : written}
      isInvalid={problem !== undefined}
      onChange={(text) => {
        setTyped(text);
        draft.set("candidates", listOf(text));
      }}
    >
      <Label>{PLAN_FORM.candidates}</Label>
      <Input autoComplete="off" />
      {problem !== undefined && (
        <Text slot="errorMessage" className="field-problem">
          {PLAN_FORM.allowed(problem.value, problem.allowed)}
        </Text>
      )}
      <Text slot="description" className="field-help">
        {PLAN_FORM.candidatesHelp}
      </Text>
    </TextField>
  );
}

function listOf(text: string): string[] | undefined {
  const list = text
    .split(",")
    .map((s) => s.trim())
    .filter((s) => s !== "");
  return list.length === 0 ? undefined : list;
}

const LIMITS = [
  { key: "laydownBoard", least: PLAN_FORM.laydownLeast, most: PLAN_FORM.laydownMost, unit: "" },
  { key: "launchAngleDeg", least: PLAN_FORM.launchLeast, most: PLAN_FORM.launchMost, unit: "°" },
  { key: "breakpointBoard", least: PLAN_FORM.breakpointLeast, most: PLAN_FORM.breakpointMost, unit: "" },
] as const;

/** Lines the bowler can play: pairs of least and most. */
export function LimitsEntries() {
  return LIMITS.map(({ key, least, most, unit }) => (
    <div className="field-row" key={key}>
      <LimitEntry name={key} end={0} label={least} unit={unit} />
      <LimitEntry name={key} end={1} label={most} unit={unit} />
    </div>
  ));
}

/** One end of a pair. As soon as one end is entered the pair stands in the job, the other end with the usual value. */
function LimitEntry({
  name,
  end,
  label,
  unit,
}: {
  readonly name: string;
  readonly end: 0 | 1;
  readonly label: string;
  readonly unit: string;
}) {
  const { draft, problems, question } = useForm();
  const path = `limits.${name}`;
  const usual = valueAt(question, path) as readonly Json[] | undefined;
  const pair = valueAt(draft.job, path) as readonly Json[] | undefined;
  const value = pair?.[end];
  const [typed, setTyped] = useState(value === undefined ? "" : String(value));
  const shown = readNumber(typed) === value ? typed : String(value ?? "");
  const problem = problemAt(problems, `${path}[${end}]`);
  const change = (text: string): void => {
    setTyped(text);
    const entered = readNumber(text);
    const next = [pair?.[0] ?? usual?.[0] ?? null, pair?.[1] ?? usual?.[1] ?? null];
    next[end] = entered ?? null;
    draft.set(path, entered === undefined ? undefined : next);
  };
  return (
    <TextField className="field" value={shown} isInvalid={problem !== undefined} onChange={change}>
      <Label>{label}</Label>
      <span className="entry">
        <Input inputMode="decimal" autoComplete="off" placeholder={usual === undefined ? "" : PLAN_FORM.taken(String(usual[end]))} />
        {unit !== "" && <span className="unit">{unit}</span>}
      </span>
      {problem !== undefined && (
        <Text slot="errorMessage" className="field-problem">
          {PLAN_FORM.allowed(problem.value, problem.allowed)}
        </Text>
      )}
    </TextField>
  );
}
