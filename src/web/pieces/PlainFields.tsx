import { type ReactNode, useId } from "react";

interface FieldProps {
  readonly label: string;
  readonly value: string;
  onChange(value: string): void;
  /** What is wrong and what is allowed, said beside the field. */
  readonly problem?: string | undefined;
  readonly help?: string | undefined;
}

interface LineProps extends FieldProps {
  readonly type?: "text" | "tel" | "search" | "email" | "password" | "date" | "datetime-local";
  /** What the browser may fill in, in its own words (HTML, 4.10.18.7.1). */
  readonly autoComplete?: "off" | "username" | "current-password" | "new-password";
  readonly inputMode?: "text" | "decimal" | "numeric" | "tel" | "search";
  /** What is taken where nothing is typed. */
  readonly placeholder?: string | undefined;
  /** Behind what is typed. */
  readonly unit?: string;
}

/** One line that is typed. */
export function LineField({ label, value, onChange, problem, help, type = "text", unit = "", autoComplete = "off", ...more }: LineProps) {
  const id = useId();
  const input = (
    <input
      {...more}
      {...described(id, problem, help)}
      type={type}
      autoComplete={autoComplete}
      value={value}
      onChange={({ target }) => onChange(target.value)}
    />
  );
  return (
    <FieldFrame id={id} label={label} problem={problem} help={help}>
      {unit === "" ? (
        input
      ) : (
        <span className="entry">
          {input}
          <span className="unit">{unit}</span>
        </span>
      )}
    </FieldFrame>
  );
}

/** Several lines. */
export function WordsField({ label, value, onChange, problem, help }: FieldProps) {
  const id = useId();
  return (
    <FieldFrame id={id} label={label} problem={problem} help={help}>
      <textarea {...described(id, problem, help)} rows={2} value={value} onChange={({ target }) => onChange(target.value)} />
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
      <select {...described(id, problem, help)} value={value} onChange={({ target }) => onChange(target.value)}>
        {value !== "" && !(value in words) && <option value={value}>{value}</option>}
        {Object.entries(words).map(([word, text]) => (
          <option key={word} value={word}>
            {text}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

/** What a reader of screens is told of a field: what is wrong with it, and what helps. */
function described(id: string, problem: string | undefined, help: string | undefined) {
  const by = [...(problem === undefined ? [] : [`${id}-problem`]), ...(help === undefined ? [] : [`${id}-help`])];
  return { id, "aria-invalid": problem !== undefined, ...(by.length === 0 ? {} : { "aria-describedby": by.join(" ") }) };
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
      {help !== undefined && (
        <span id={`${id}-help`} className="field-help">
          {help}
        </span>
      )}
    </div>
  );
}
