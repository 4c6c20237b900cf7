import { useEffect, useId, useRef } from "react";
import { MEASURE } from "#words/en/rooms/measure";
import { fixed } from "#words/figures";
import { mostIn, type RoughnessUnit, readingsOf } from "../../measured/entries.ts";
import { meanOf } from "../../measured/readings.ts";

interface PadProps {
  /** What is read, for those who do not see the heading. */
  readonly label: string;
  readonly typed: string;
  readonly unit: RoughnessUnit;
  readonly next: string;
  figure(um: number): string;
  onType(typed: string): void;
  /** Goes on; with the readings, µm, that are to be saved first. */
  onNext(um: readonly number[]): void;
}

/** Readings of one place, one or several, by the keys in view or those of the machine. What is no reading is said at the field. */
export function TesterPad({ label, typed, unit, next, figure, onType, onNext }: PadProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  // A tester's figures are typed at once; the page stays where it is.
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const um = readingsOf(typed, unit);
  const mean = meanOf(um ?? []);
  const press = (sign: string) => {
    onType(`${typed}${sign}`);
    field.current?.focus({ preventScroll: true });
  };
  return (
    <form
      className="tester-pad"
      onSubmit={(event) => {
        event.preventDefault();
        if (um === null) field.current?.focus();
        else onNext(um);
      }}
    >
      <div className="tester-field" data-invalid={um === null ? true : undefined}>
        <input
          ref={field}
          // The keys in view are the keyboard; one that slides in would hide the ball.
          inputMode="none"
          autoComplete="off"
          aria-label={label}
          aria-invalid={um === null}
          aria-describedby={um === null ? `${id}-problem` : undefined}
          value={typed}
          onChange={({ target }) => onType(target.value)}
        />
        {mean !== null && <span className="tester-mean">{MEASURE.mean(figure(mean), unit)}</span>}
      </div>
      {um === null && (
        <p id={`${id}-problem`} className="field-problem">
          {MEASURE.notANumber(typed.trim(), `${Number(mostIn(unit).toPrecision(6))} ${unit}`)}
        </p>
      )}
      <div className="tester-keys">
        {["7", "8", "9"].map((sign) => (
          <Key key={sign} sign={sign} onPress={press} />
        ))}
        <button type="button" className="button" aria-label={MEASURE.clearLast} onClick={() => onType(typed.slice(0, -1))}>
          ⌫
        </button>
        {["4", "5", "6"].map((sign) => (
          <Key key={sign} sign={sign} onPress={press} />
        ))}
        <button type="button" className="button key-word" onClick={() => press(" ")}>
          {MEASURE.oneMore}
        </button>
        {["1", "2", "3"].map((sign) => (
          <Key key={sign} sign={sign} onPress={press} />
        ))}
        <button type="submit" className="button primary key-next">
          {next}
        </button>
        <Key sign={DECIMAL_SIGN} onPress={press} />
        <Key sign="0" onPress={press} />
      </div>
    </form>
  );
}

/** As the reader's language writes it. */
const DECIMAL_SIGN = fixed(0.5, 1).charAt(1);

function Key({ sign, onPress }: { readonly sign: string; onPress(sign: string): void }) {
  return (
    <button type="button" className={sign === "0" ? "button key-wide" : "button"} onClick={() => onPress(sign)}>
      {sign}
    </button>
  );
}
