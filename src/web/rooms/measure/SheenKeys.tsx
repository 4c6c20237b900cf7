import { useEffect, useRef } from "react";
import { MEASURE } from "#words/en/rooms/measure";
import type { Comparison } from "../../measured/entries.ts";

interface SheenProps {
  readonly label: string;
  /** How it was seen last; null where it was not. */
  readonly seen: Comparison | null;
  onSee(comparison: Comparison): void;
  onNext(): void;
}

/** How a place looks and feels beside the reference ball: one press, and the next one is asked for. By keyboard the space bar presses a key, and Enter goes on to the next side. */
export function SheenKeys({ label, seen, onSee, onNext }: SheenProps) {
  const keys = useRef<HTMLFieldSetElement>(null);
  // The keyboard's way through the sides: the keys stay where the fingers are.
  useEffect(() => {
    if (document.activeElement === document.body) keys.current?.querySelector("button")?.focus();
  }, []);
  return (
    <fieldset
      className="sheen-keys"
      aria-label={label}
      ref={keys}
      onKeyDown={(event) => {
        if (event.key !== "Enter") return;
        event.preventDefault();
        onNext();
      }}
    >
      {(Object.entries(MEASURE.sheenKeys) as [Comparison, string][]).map(([comparison, text]) => (
        <button key={comparison} type="button" className="button" aria-pressed={seen === comparison} onClick={() => onSee(comparison)}>
          {text}
        </button>
      ))}
      <button type="button" className="button quiet" onClick={onNext}>
        {MEASURE.next}
      </button>
    </fieldset>
  );
}
