import { useEffect, useRef, useState } from "react";
import { ACCESS } from "#words/en/rooms/access";
import { Fold } from "../pieces/Fold.tsx";
import { answered, shop } from "../shop/shopClient.ts";
import { useOutbox } from "../shop/useOutbox.tsx";
import { usePeople } from "../shop/usePeople.ts";
import { leaveSession, useSession } from "../shop/useSession.tsx";
import { useWrite } from "../shop/useShop.ts";
import { WriteFault } from "../shop/WriteFault.tsx";
import { OwnPin, OwnSecret } from "./OwnSecrets.tsx";
import { TakeOver } from "./TakeOver.tsx";

/** Who is signed in, in the bar; opens what this person can do about it. */
export function SignedIn() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [isOpen, setOpen] = useState(false);
  const { personId } = useSession();
  const person = usePeople().data?.find(({ id }) => id === personId);
  useEffect(() => {
    if (isOpen) dialog.current?.showModal();
  }, [isOpen]);
  const close = () => dialog.current?.close();
  return (
    <>
      <button
        type="button"
        className="button signed-in"
        aria-label={person === undefined ? ACCESS.openName : ACCESS.open(person.initials, person.name)}
        onClick={() => setOpen(true)}
      >
        {person?.initials ?? "…"}
        {person !== undefined && <span className="beside-initials"> · {person.name}</span>}
      </button>
      {isOpen && (
        <dialog ref={dialog} className="plate search-anywhere who-is-in" aria-label={ACCESS.openName} onClose={() => setOpen(false)}>
          <WhoIsIn name={person?.name ?? ""} onDone={close} />
        </dialog>
      )}
    </>
  );
}

function WhoIsIn({ name, onDone }: { readonly name: string; onDone(): void }) {
  const { role } = useSession();
  return (
    <>
      <h2>{name}</h2>
      {role !== null && (
        <p>
          {ACCESS.roles[role]}: {ACCESS.rolesMay[role]}
        </p>
      )}
      <TakeOver onDone={onDone} />
      <Fold title={ACCESS.own} summary="" startsOpen="never" level={3}>
        <OwnSecret />
        <OwnPin />
      </Fold>
      <SignOut onClose={onDone} />
    </>
  );
}

function SignOut({ onClose }: { onClose(): void }) {
  const { waiting } = useOutbox();
  const [isAsked, setAsked] = useState(false);
  const out = useWrite((_: undefined) => answered(shop.session.$delete()), []);
  const leave = () => out.mutate(undefined, { onSuccess: () => void leaveSession() });
  if (isAsked)
    return (
      <div role="alert" className="failed">
        <p>{ACCESS.signOutWaits(waiting.length)}</p>
        <div className="buttons">
          <button type="button" className="button" onClick={() => setAsked(false)}>
            {ACCESS.stay}
          </button>
          <button type="button" className="button" disabled={out.isPending} onClick={leave}>
            {ACCESS.signOutAnyway}
          </button>
        </div>
        <WriteFault error={out.error} />
      </div>
    );
  return (
    <div className="buttons">
      <button type="button" className="button" disabled={out.isPending} onClick={() => (waiting.length > 0 ? setAsked(true) : leave())}>
        {ACCESS.signOut}
      </button>
      <button type="button" className="button" onClick={onClose}>
        {ACCESS.close}
      </button>
      <WriteFault error={out.error} />
    </div>
  );
}
