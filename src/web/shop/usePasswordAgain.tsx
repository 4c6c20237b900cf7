import { type ReactNode, useState } from "react";
import { PASSWORD_HEADER } from "#contract/routes/route";
import { ACCESS } from "#words/en/rooms/access";
import { LineField } from "../pieces/PlainFields.tsx";
import { useSession } from "./useSession.tsx";

interface PasswordAgain {
  /** Where it is typed; nothing in a shop without passwords. */
  readonly field: ReactNode;
  /** What goes along with the request. */
  readonly headers: Readonly<Record<string, string>>;
  /** Whether it is still to be typed. */
  readonly isMissing: boolean;
}

/** The own password once more, for what takes everything out or ends what is kept. */
export function usePasswordAgain(): PasswordAgain {
  const isAsked = useSession().state === "signed in";
  const [password, setPassword] = useState("");
  if (!isAsked) return { field: null, headers: {}, isMissing: false };
  return {
    field: (
      <LineField label={ACCESS.ownPasswordAsked} value={password} type="password" autoComplete="current-password" onChange={setPassword} />
    ),
    headers: { [PASSWORD_HEADER]: encodeURIComponent(password) },
    isMissing: password === "",
  };
}
