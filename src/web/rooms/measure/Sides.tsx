import { type KeyboardEvent, type ReactNode, useId } from "react";
import { SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import { SIDE_NAMES } from "#words/en/padWork";
import { MEASURE } from "#words/en/rooms/measure";
import { type Comparison, mostIn, type ReadingsDraft, type RoughnessUnit, readingsOf } from "./entries.ts";

/** Six sides one under the other; Enter goes to the next one, and from the last to what keeps them. */
function Walk({ children }: { readonly children: ReactNode }) {
  return (
    // The keys come from the fields inside: this only says where Enter leads.
    // biome-ignore lint/a11y/noStaticElementInteractions: see above
    <div className="sides" onKeyDown={walkOn}>
      {children}
    </div>
  );
}

function walkOn(event: KeyboardEvent<HTMLElement>): void {
  if (event.key !== "Enter" || !(event.target instanceof HTMLInputElement)) return;
  event.preventDefault();
  const sides = [...event.currentTarget.querySelectorAll<HTMLElement>("[data-side]")];
  const next = sides[sides.findIndex((side) => side.contains(event.target as Node)) + 1];
  const field = next?.querySelector<HTMLElement>("input:checked") ?? next?.querySelector<HTMLElement>("input");
  (field ?? event.currentTarget.closest("form")?.querySelector<HTMLElement>("[data-keep]"))?.focus();
}

interface SheenProps {
  readonly sheen: ReadingsDraft["sheen"];
  onChange(side: SideId, comparison: Comparison): void;
}

/** How each side looks and feels beside the reference ball. */
export function SheenSides({ sheen, onChange }: SheenProps) {
  const name = useId();
  return (
    <Walk>
      {SIDE_IDS.map((side) => (
        <fieldset key={side} className="side choices" data-side={side}>
          <legend>{SIDE_NAMES[side]}</legend>
          <div className="choices-words">
            {(Object.entries(MEASURE.comparisons) as [Comparison, string][]).map(([comparison, text]) => (
              <label key={comparison} className="choice">
                <input
                  type="radio"
                  name={`${name}-${side}`}
                  checked={sheen[side] === comparison}
                  onChange={() => onChange(side, comparison)}
                />
                <span>{text}</span>
              </label>
            ))}
          </div>
        </fieldset>
      ))}
    </Walk>
  );
}

interface TesterProps {
  readonly typed: ReadingsDraft["typed"];
  readonly unit: RoughnessUnit;
  onChange(side: SideId, typed: string): void;
}

/** One reading or several on each side. What is no reading is answered beside its field. */
export function TesterSides({ typed, unit, onChange }: TesterProps) {
  const id = useId();
  return (
    <Walk>
      {SIDE_IDS.map((side) => {
        const written = typed[side] ?? "";
        const isWrong = readingsOf(written, unit) === null;
        return (
          <div key={side} className="side field plain-field" data-side={side}>
            <label htmlFor={`${id}-${side}`}>
              {SIDE_NAMES[side]}, {MEASURE.unit(unit)}
            </label>
            <input
              id={`${id}-${side}`}
              inputMode="decimal"
              autoComplete="off"
              value={written}
              aria-invalid={isWrong}
              aria-describedby={isWrong ? `${id}-${side}-problem` : undefined}
              onChange={({ target }) => onChange(side, target.value)}
            />
            {isWrong && (
              <span id={`${id}-${side}-problem`} className="field-problem">
                {MEASURE.notANumber(written, `${Number(mostIn(unit).toPrecision(6))} ${unit}`)}
              </span>
            )}
          </div>
        );
      })}
    </Walk>
  );
}
