interface ChoicesProps<Word extends string> {
  readonly label: string;
  readonly words: Readonly<Record<Word, string>>;
  readonly chosen: readonly Word[];
  onChange(chosen: readonly Word[]): void;
}

/** Any number of things, each a whole line that a wet finger finds. */
export function Choices<Word extends string>({ label, words, chosen, onChange }: ChoicesProps<Word>) {
  const toggle = (word: Word) => onChange(chosen.includes(word) ? chosen.filter((one) => one !== word) : [...chosen, word]);
  return (
    <fieldset className="choices">
      <legend>{label}</legend>
      <div className="choices-words">
        {(Object.entries(words) as [Word, string][]).map(([word, text]) => (
          <label key={word} className="choice">
            <input type="checkbox" checked={chosen.includes(word)} onChange={() => toggle(word)} />
            <span>{text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
