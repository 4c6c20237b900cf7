import { type FormEvent, type ReactNode, useState } from "react";
import { ACCESS } from "#words/en/rooms/access";
import { LineField } from "../pieces/PlainFields.tsx";
import { answered, type ShopFault, shop } from "../shop/shopClient.ts";
import { textOrNull } from "../shop/typedValues.ts";
import { useWrite } from "../shop/useShop.ts";
import { WriteFault } from "../shop/WriteFault.tsx";

const TOUCHES = ["session", "sessions", "sign-ins"];

/** One's own password: the old one is asked for once more. */
export function OwnSecret() {
  const [ownPassword, setOwn] = useState("");
  const [password, setPassword] = useState("");
  const write = useWrite(() => answered(shop.session.password.$post({ json: { ownPassword, password } })), TOUCHES);
  const problem = write.error?.fields.find(({ path }) => path === "password")?.message;
  const kept = () => {
    setOwn("");
    setPassword("");
  };
  return (
    <SecretForm
      button={ACCESS.setPassword}
      error={problem === undefined ? write.error : null}
      isKept={write.isSuccess && password === ""}
      isReady={!write.isPending && ownPassword !== "" && password !== ""}
      onSubmit={() => write.mutate(undefined, { onSuccess: kept })}
    >
      <LineField label={ACCESS.ownPassword} value={ownPassword} type="password" autoComplete="current-password" onChange={setOwn} />
      <LineField
        label={ACCESS.newPassword}
        help={ACCESS.newPasswordHelp}
        value={password}
        type="password"
        autoComplete="new-password"
        problem={problem}
        onChange={setPassword}
      />
    </SecretForm>
  );
}

/** One's own PIN, to take over at a shared counter. */
export function OwnPin() {
  const [ownPassword, setOwn] = useState("");
  const [pin, setPin] = useState("");
  const write = useWrite(() => answered(shop.session.pin.$post({ json: { ownPassword, pin: textOrNull(pin) } })), TOUCHES);
  const problem = write.error?.fields.find(({ path }) => path === "pin")?.message;
  const kept = () => {
    setOwn("");
    setPin("");
  };
  return (
    <SecretForm
      button={ACCESS.setPin}
      error={problem === undefined ? write.error : null}
      isKept={write.isSuccess && ownPassword === ""}
      isReady={!write.isPending && ownPassword !== ""}
      onSubmit={() => write.mutate(undefined, { onSuccess: kept })}
    >
      <LineField label={ACCESS.ownPassword} value={ownPassword} type="password" autoComplete="current-password" onChange={setOwn} />
      <LineField
        label={ACCESS.newPin}
        help={ACCESS.newPinHelp}
        value={pin}
        type="password"
        inputMode="numeric"
        autoComplete="off"
        problem={problem}
        onChange={setPin}
      />
    </SecretForm>
  );
}

interface FormProps {
  readonly button: string;
  readonly error: ShopFault | null;
  readonly isKept: boolean;
  readonly isReady: boolean;
  onSubmit(): void;
  readonly children: ReactNode;
}

function SecretForm({ button, error, isKept, isReady, onSubmit, children }: FormProps) {
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onSubmit();
  };
  return (
    <form className="edit-form secrets" onSubmit={submit}>
      <div className="field-row">{children}</div>
      <WriteFault error={error} />
      {isKept && <p role="status">{ACCESS.kept}</p>}
      <button type="submit" className="button" disabled={!isReady}>
        {button}
      </button>
    </form>
  );
}
