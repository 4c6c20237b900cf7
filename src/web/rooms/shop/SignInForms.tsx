import { type FormEvent, type ReactNode, useState } from "react";
import type { Account } from "#contract/records/account";
import type { Person } from "#contract/records/person";
import type { Role } from "#contract/records/roles";
import { PASSWORD_HEADER } from "#contract/routes/route";
import { ACCESS } from "#words/en/rooms/access";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { announceSession } from "../../shop/sessionNews.ts";
import { answered, type ShopFault, shop } from "../../shop/shopClient.ts";
import { useSession } from "../../shop/useSession.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

const TOUCHES = ["sign-ins", "sessions", "audit"];

interface FormProps {
  readonly person: Person;
  onClose(): void;
}

/** The first password of a person; the first in the shop is its owner's. */
export function GiveSignIn({ person, onClose }: FormProps) {
  const isFirst = useSession().state === "no passwords";
  const [signInName, setName] = useState("");
  const [role, setRole] = useState<Role>(isFirst ? "owner" : "counter");
  const [password, setPassword] = useState("");
  const [ownPassword, setOwn] = useState("");
  const own = isFirst ? {} : { ownPassword };
  const param = { id: person.id };
  const write = useWrite(
    () => answered(shop.people[":id"]["sign-in"].$post({ param, json: { signInName, role, password, ...own } })),
    TOUCHES,
  );
  const done = () => {
    onClose();
    // After the first one somebody must sign in here too.
    if (isFirst) announceSession();
  };
  return (
    <SecretsForm
      title={ACCESS.giveTo(person.name)}
      error={write.error}
      isBusy={write.isPending}
      onSubmit={() => write.mutate(undefined, { onSuccess: done })}
      onClose={onClose}
    >
      <LineField label={ACCESS.name} value={signInName} problem={problemOf(write.error, "signInName")} onChange={setName} />
      {!isFirst && <RoleField role={role} problem={problemOf(write.error, "role")} onChange={setRole} />}
      <PasswordFor value={password} problem={problemOf(write.error, "password")} onChange={setPassword} />
      {!isFirst && <OwnPassword value={ownPassword} onChange={setOwn} />}
    </SecretsForm>
  );
}

/** Name, role, a new password, the PIN, or the end of it all. */
export function ChangeSignIn({ person, account, onClose }: FormProps & { readonly account: Account }) {
  const [signInName, setName] = useState(account.signInName);
  const [role, setRole] = useState<Role>(account.role);
  const [password, setPassword] = useState("");
  const [ownPassword, setOwn] = useState("");
  const param = { id: person.id };
  const json = {
    ...(signInName === account.signInName ? {} : { signInName }),
    ...(role === account.role ? {} : { role }),
    ...(password === "" ? {} : { password }),
    ownPassword,
  };
  const change = useWrite(
    (more: { readonly pin?: null }) => answered(shop.people[":id"]["sign-in"].$patch({ param, json: { ...json, ...more } })),
    TOUCHES,
  );
  const close = useWrite(
    (_: undefined) =>
      answered(shop.people[":id"]["sign-in"].$delete({ param }, { headers: { [PASSWORD_HEADER]: encodeURIComponent(ownPassword) } })),
    TOUCHES,
  );
  const done = () => {
    onClose();
    announceSession();
  };
  return (
    <SecretsForm
      title={ACCESS.changeOf(person.name)}
      error={change.error ?? close.error}
      isBusy={change.isPending || close.isPending}
      onSubmit={() => change.mutate({}, { onSuccess: done })}
      onClose={onClose}
      more={
        <>
          {account.hasPin && (
            <button type="button" className="button" onClick={() => change.mutate({ pin: null }, { onSuccess: done })}>
              {ACCESS.takePin}
            </button>
          )}
          <button type="button" className="button" onClick={() => close.mutate(undefined, { onSuccess: done })}>
            {ACCESS.takeAway}
          </button>
        </>
      }
    >
      <LineField label={ACCESS.name} value={signInName} problem={problemOf(change.error, "signInName")} onChange={setName} />
      <RoleField role={role} problem={problemOf(change.error ?? close.error, "role")} onChange={setRole} />
      <PasswordFor value={password} help={ACCESS.passwordStays} problem={problemOf(change.error, "password")} onChange={setPassword} />
      <OwnPassword value={ownPassword} onChange={setOwn} />
    </SecretsForm>
  );
}

interface PasswordProps {
  readonly value: string;
  readonly help?: string;
  readonly problem: string | undefined;
  onChange(value: string): void;
}

function PasswordFor(props: PasswordProps) {
  return <LineField label={ACCESS.passwordFor} type="password" autoComplete="new-password" {...props} />;
}

function OwnPassword({ value, onChange }: { readonly value: string; onChange(value: string): void }) {
  return <LineField label={ACCESS.ownPasswordAsked} value={value} type="password" autoComplete="current-password" onChange={onChange} />;
}

interface RoleProps {
  readonly role: Role;
  readonly problem: string | undefined;
  onChange(role: Role): void;
}

function RoleField({ role, problem, onChange }: RoleProps) {
  return (
    <WordField
      label={ACCESS.role}
      help={ACCESS.rolesMay[role]}
      value={role}
      words={ACCESS.roles}
      problem={problem}
      onChange={(word) => onChange(word as Role)}
    />
  );
}

const BESIDE = new Set(["signInName", "role", "password"]);

function problemOf(error: ShopFault | null, path: string): string | undefined {
  return error?.fields.find((field) => field.path === path)?.message;
}

interface SecretsProps {
  readonly title: string;
  readonly error: ShopFault | null;
  readonly isBusy: boolean;
  /** Buttons beside those of every form. */
  readonly more?: ReactNode;
  onSubmit(): void;
  onClose(): void;
  readonly children: ReactNode;
}

function SecretsForm({ title, error, isBusy, more, onSubmit, onClose, children }: SecretsProps) {
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onSubmit();
  };
  const isBeside = error?.fields.some(({ path }) => BESIDE.has(path)) === true;
  return (
    <section className="amount-form" aria-label={title}>
      <h3>{title}</h3>
      <form className="edit-form secrets" onSubmit={submit}>
        <div className="field-row">{children}</div>
        {!isBeside && <WriteFault error={error} />}
        <div className="buttons">
          <button type="submit" className="button primary" disabled={isBusy}>
            {ACCESS.keep}
          </button>
          <button type="button" className="button" disabled={isBusy} onClick={onClose}>
            {ACCESS.leave}
          </button>
          {more}
        </div>
      </form>
    </section>
  );
}
