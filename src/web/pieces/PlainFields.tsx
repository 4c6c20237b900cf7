import { type ReactNode, useId } from "react";

interface FieldProps {
  readonly label: string;
  readonly value: string;
  onChange(value: string): void;
  /** What is wrong and what is allowed, said beside the field. */
  readonly problem?: string | undefined;
  readonly help?: string;
}

interface LineProps extends FieldProps {
  readonly type?: "text" | "tel" | "search" | "email" | "password" | "date" | "datetime-local";
  /** What the browser may fill in, in its own words (HTML, 4.10.18.7.1). */
  readonly autoComplete?: "off" | "username" | "current-password" | "new-password";
  readonly inputMode?: "text" | "decimal" | "numeric" | "tel" | "search";
}

/** One line that is typed. */
export function LineField({ label, value, onChange, problem, help, type = "text", inputMode, autoComplete = "off" }: LineProps) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} problem={problem} help={help}>
      <input
        id={id}
        type={type}
        inputMode={inputMode}
        autoComplete={autoComplete}
        value={value}
        aria-invalid={problem !== undefined}
        aria-describedby={problem === undefined ? undefined : `${id}-problem`}
        onChange={({ target }) => onChange(target.value)}
      />
    </FieldFrame>
  );
}

/** Several lines. */
export function WordsField({ label, value, onChange, problem, help }: FieldProps) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} problem={problem} help={help}>
      <textarea id={id} rows={2} value={value} onChange={({ target }) => onChange(target.value)} />
    </FieldFrame>
  );
}

/** One of some words, in the browser's own list: the best there is on a phone, and by keyboard. */
export function WordField({
  label,
  value,
  onChange,
  problem,
  help,
  words,
}: FieldProps & { readonly words: Readonly<Record<string, string>> }) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} problem={problem} help={help}>
      <select id={id} value={value} aria-invalid={problem !== undefined} onChange={({ target }) => onChange(target.value)}>
        {Object.entries(words).map(([word, text]) => (
          <option key={word} value={word}>
            {text}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

interface FrameProps {
  readonly id: string;
  readonly label: string;
  readonly problem: string | undefined;
  readonly help: string | undefined;
  readonly children: ReactNode;
}

function FieldFrame({ id, label, problem, help, children }: FrameProps) {
  return (
    <div className="field plain-field">
      <label htmlFor={id}>{label}</label>
      {children}
      {problem !== undefined && (
        <span id={`${id}-problem`} className="field-problem">
          {problem}
        </span>
      )}
      {help !== undefined && <span className="field-help">{help}</span>}
    </div>
  );
}
