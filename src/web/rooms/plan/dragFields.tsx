import { useEffect, useId, useRef, useState } from "react";
import { PLAN_FORM } from "#words/en/screens";
import { type Json, valueAt } from "../../jobFile/jobDraft.ts";
import { useForm } from "./formContext.ts";

/** While something is dragged the question is asked this often: the first look takes about as long, and an answer that never comes does not follow. */
const ASK_EVERY_MS = 250;

interface RangeOf {
  readonly from: number;
  readonly to: number;
  readonly step: number;
}

interface DragProps extends RangeOf {
  readonly label: string;
  readonly value: number | null;
  /** The value with its unit, for those who hear it. */
  readonly words: string;
  onDrag(value: number): void;
}

/** A number that is dragged, by finger, mouse or arrow keys. The knob follows at once, the question a few times a second. */
function Drag({ label, value, from, to, step, words, onDrag }: DragProps) {
  const [held, setHeld] = useState<number | null>(null);
  const waiting = useRef<{ timer: ReturnType<typeof setTimeout>; value: number } | null>(null);
  const drag = useRef(onDrag);
  drag.current = onDrag;
  useEffect(
    () => () => {
      if (waiting.current === null) return;
      clearTimeout(waiting.current.timer);
      drag.current(waiting.current.value);
    },
    [],
  );
  const id = useId();
  const move = (next: number): void => {
    setHeld(next);
    if (waiting.current !== null) {
      waiting.current.value = next;
      return;
    }
    const timer = setTimeout(() => {
      const last = waiting.current?.value ?? next;
      waiting.current = null;
      setHeld(null);
      drag.current(last);
    }, ASK_EVERY_MS);
    waiting.current = { timer, value: next };
  };
  return (
    <div className="drag">
      <label htmlFor={id} className="drag-label">
        {PLAN_FORM.drag(label)}
      </label>
      <input
        id={id}
        type="range"
        min={from}
        max={to}
        step={step}
        value={held ?? value ?? (from + to) / 2}
        aria-valuetext={words}
        onChange={({ target }) => move(Number(target.value))}
      />
    </div>
  );
}

/** The same number as the field above it, to be dragged. Where nothing was entered the knob stands at what was taken. */
export function DragEntry({
  path,
  label,
  unit,
  ...range
}: RangeOf & { readonly path: string; readonly label: string; readonly unit: string }) {
  const { draft, question } = useForm();
  const entered = valueAt(draft.job, path);
  const taken = valueAt(question, path);
  const value = typeof entered === "number" ? entered : typeof taken === "number" ? taken : null;
  return (
    <Drag
      {...range}
      label={label}
      value={value}
      words={value === null ? "" : PLAN_FORM.withUnit(value, unit)}
      onDrag={(next) => draft.set(path, next)}
    />
  );
}

const OIL = { id: "film.scale", usual: 1, from: 0.5, to: 1.5, step: 0.05 } as const;

/** How much oil lies there against what the pattern says: the model's own assumption, set for this plan. */
export function OilDrag() {
  const { draft } = useForm();
  const assumptions = valueAt(draft.job, "assumptions");
  const kept = typeof assumptions === "object" && assumptions !== null ? (assumptions as Readonly<Record<string, Json>>) : {};
  const entered = kept[OIL.id];
  const value = typeof entered === "number" ? entered : OIL.usual;
  const set = (next: number): void => {
    const { [OIL.id]: _, ...others } = kept;
    const all: Readonly<Record<string, Json>> = next === OIL.usual ? others : { ...others, [OIL.id]: next };
    draft.set("assumptions", Object.keys(all).length === 0 ? undefined : all);
  };
  return (
    <div className="field">
      <span>
        {PLAN_FORM.oilScale}: <strong>{PLAN_FORM.percentOfPattern(value)}</strong>
      </span>
      <Drag {...OIL} label={PLAN_FORM.oilScale} value={value} words={PLAN_FORM.percentOfPattern(value)} onDrag={set} />
    </div>
  );
}
