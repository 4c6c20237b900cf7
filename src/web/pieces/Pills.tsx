import { useId } from "react";

interface PillsProps<Word extends string> {
  readonly label: string;
  readonly words: Readonly<Record<Word, string>>;
  /** Empty where none was tapped. */
  readonly value: Word | "";
  /** Tapped again, what is on goes off. */
  onChange(value: Word | ""): void;
}

/** One of a few words, by one tap; none is on unless somebody tapped it, or it is known. */
export function Pills<Word extends string>({ label, words, value, onChange }: PillsProps<Word>) {
  return (
    <PillRow label={label}>
      {entriesOf(words).map(([word, text]) => (
        <Pill key={word} isOn={word === value} onTap={() => onChange(word === value ? "" : word)}>
          {text}
        </Pill>
      ))}
    </PillRow>
  );
}

interface PillSetProps<Word extends string> {
  readonly label: string;
  readonly words: Readonly<Record<Word, string>>;
  readonly chosen: readonly Word[];
  /** Those that are warnings. */
  readonly dashed?: readonly Word[];
  onChange(chosen: readonly Word[]): void;
}

/** Any number of a few words. */
export function PillSet<Word extends string>({ label, words, chosen, dashed = [], onChange }: PillSetProps<Word>) {
  const toggle = (word: Word) => onChange(chosen.includes(word) ? chosen.filter((one) => one !== word) : [...chosen, word]);
  return (
    <PillRow label={label}>
      {entriesOf(words).map(([word, text]) => (
        <Pill key={word} isOn={chosen.includes(word)} look={dashed.includes(word) ? "dashed" : "plain"} onTap={() => toggle(word)}>
          {text}
        </Pill>
      ))}
    </PillRow>
  );
}

/** A row with its name, whatever stands in it. */
export function PillRow({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  const id = useId();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset's legend cannot stand beside what it names
    <div className="pill-row" role="group" aria-labelledby={id}>
      <span id={id} className="pill-name">
        {label}
      </span>
      <span className="pills">{children}</span>
    </div>
  );
}

interface PillProps {
  readonly isOn: boolean;
  readonly look?: "plain" | "dashed";
  readonly children: string;
  onTap(): void;
}

export function Pill({ isOn, look = "plain", children, onTap }: PillProps) {
  return (
    <button type="button" className={`pill ${look}`} aria-pressed={isOn} onClick={onTap}>
      {children}
    </button>
  );
}

function entriesOf<Word extends string>(words: Readonly<Record<Word, string>>): readonly [Word, string][] {
  return Object.entries(words) as [Word, string][];
}
