import { Label, Radio, RadioGroup } from "react-aria-components";

/** One of two or three words, all of them in view. */
export function OneOf<Word extends string>(props: {
  readonly label: string;
  readonly value: Word;
  readonly words: Readonly<Record<Word, string>>;
  readonly onChange: (word: Word) => void;
}) {
  return (
    <RadioGroup className="one-of field" value={props.value} onChange={(word) => props.onChange(word as Word)} orientation="horizontal">
      <Label>{props.label}</Label>
      <span className="one-of-words">
        {Object.entries<string>(props.words).map(([word, text]) => (
          <Radio key={word} value={word} className="one-of-word">
            {text}
          </Radio>
        ))}
      </span>
    </RadioGroup>
  );
}
