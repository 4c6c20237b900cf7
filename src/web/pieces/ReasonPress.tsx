import { type ReactNode, useState } from "react";
import { LineField } from "./PlainFields.tsx";

interface ReasonProps {
  /** What is pressed first. */
  readonly press: string;
  /** What is asked then. */
  readonly label: string;
  /** What does it, once a reason is there. */
  readonly act: string;
  readonly className: "button" | "link";
  readonly isBusy?: boolean;
  onSay(why: string): void;
  /** What went wrong, said in the form. */
  readonly children?: ReactNode;
}

/** Something that is done only with a reason: the press asks for it. */
export function ReasonPress({ press, label, act, className, isBusy = false, onSay, children }: ReasonProps) {
  const [why, setWhy] = useState<string | null>(null);
  if (why === null)
    return (
      <button type="button" className={`${className} no-print`} onClick={() => setWhy("")}>
        {press}
      </button>
    );
  return (
    <form
      className="take-back no-print"
      onSubmit={(event) => {
        event.preventDefault();
        if (why.trim() !== "") onSay(why.trim());
      }}
    >
      <LineField label={label} value={why} onChange={setWhy} />
      <button type="submit" className="button" disabled={why.trim() === "" || isBusy}>
        {act}
      </button>
      {children}
    </form>
  );
}
