import { useId } from "react";

interface TapsProps {
  readonly label: string;
  readonly words: Readonly<Record<string, string>>;
  /** Empty where nothing is chosen. */
  readonly value: string;
  onChange(value: string): void;
}

/** One of three words or none, each large enough to be tapped without looking. */
export function Taps({ label, words, value, onChange }: TapsProps) {
  const name = useId();
  return (
    <fieldset className="choices taps">
      <legend>{label}</legend>
      <div className="choices-words">
        {Object.entries(words).map(([word, text]) => (
          <label key={word} className="choice">
            <input
              type="radio"
              name={name}
              checked={value === word}
              onChange={() => onChange(word)}
              // A second tap takes it back: radio buttons alone cannot be emptied.
              onClick={() => value === word && onChange("")}
            />
            <span>{text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
