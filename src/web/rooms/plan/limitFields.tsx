import { useState } from "react";
import { PLAN_FORM } from "#words/en/screens";
import { type Json, readNumber, valueAt } from "../../jobFile/jobDraft.ts";
import { LineField } from "../../pieces/PlainFields.tsx";
import { useProblem } from "./fields.tsx";
import { useForm } from "./formContext.ts";

/** Finishes to compare, as one line of text: `1000, 2000, 2000 + polish`. */
export function CandidatesEntry() {
  const { draft } = useForm();
  const value = valueAt(draft.job, "candidates");
  const written = Array.isArray(value) ? value.join(", ") : "";
  const [typed, setTyped] = useState(written);
  const isOwn = JSON.stringify(listOf(typed) ?? []) === JSON.stringify(value ?? []);
  return (
    <LineField
      label={PLAN_FORM.candidates}
      help={PLAN_FORM.candidatesHelp}
      value={isOwn ? typed : written}
      problem={useProblem("candidates")}
      onChange={(text) => {
        setTyped(text);
        draft.set("candidates", listOf(text));
      }}
    />
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

interface LimitProps {
  readonly name: string;
  readonly end: 0 | 1;
  readonly label: string;
  readonly unit: string;
}

/** One end of a pair. As soon as one end is entered the pair stands in the job, the other end with the usual value. */
function LimitEntry({ name, end, label, unit }: LimitProps) {
  const { draft, question } = useForm();
  const path = `limits.${name}`;
  const usual = valueAt(question, path) as readonly Json[] | undefined;
  const pair = valueAt(draft.job, path) as readonly Json[] | undefined;
  const value = pair?.[end];
  const [typed, setTyped] = useState(value === undefined ? "" : String(value));
  const shown = readNumber(typed) === value ? typed : String(value ?? "");
  const change = (text: string): void => {
    setTyped(text);
    const entered = readNumber(text);
    const next = [pair?.[0] ?? usual?.[0] ?? null, pair?.[1] ?? usual?.[1] ?? null];
    next[end] = entered ?? null;
    draft.set(path, entered === undefined ? undefined : next);
  };
  return (
    <LineField
      label={label}
      unit={unit}
      inputMode="decimal"
      placeholder={usual === undefined ? "" : PLAN_FORM.taken(String(usual[end]))}
      value={shown}
      problem={useProblem(`${path}[${end}]`)}
      onChange={change}
    />
  );
}
