import { type FormEvent, useState } from "react";
import { ACCESS } from "#words/en/rooms/access";
import { LineField, WordField } from "../pieces/PlainFields.tsx";
import { Reading } from "../shop/Reading.tsx";
import { answered, shop } from "../shop/shopClient.ts";
import { usePeople } from "../shop/usePeople.ts";
import { useEnter, useSession } from "../shop/useSession.tsx";
import { useRead, useWrite } from "../shop/useShop.ts";
import { WriteFault } from "../shop/WriteFault.tsx";

interface TakeOverProps {
  onDone(): void;
}

/** A short PIN changes the person at a counter that several use. */
export function TakeOver({ onDone }: TakeOverProps) {
  const { personId } = useSession();
  const takers = useRead(["session", "people"], () => answered(shop.session.people.$get()));
  return (
    <section aria-label={ACCESS.takeOver}>
      <h3>{ACCESS.takeOver}</h3>
      <Reading of={takers} isEmpty={({ items }) => items.every((one) => one.personId === personId)} empty={ACCESS.noTakers}>
        {({ items }) => <Takers takers={items.filter((one) => one.personId !== personId)} onDone={onDone} />}
      </Reading>
    </section>
  );
}

interface TakersProps extends TakeOverProps {
  readonly takers: readonly { readonly personId: string; readonly pinIsOff: boolean }[];
}

function Takers({ takers, onDone }: TakersProps) {
  const people = usePeople().data ?? [];
  const enter = useEnter();
  const [personId, setPerson] = useState(takers[0].personId);
  const [pin, setPin] = useState("");
  const take = useWrite(() => answered(shop.session.person.$post({ json: { personId, pin } })), ["session"]);
  const names = Object.fromEntries(
    takers.map(({ personId: id, pinIsOff }) => {
      const name = people.find((one) => one.id === id)?.name ?? "…";
      return [id, pinIsOff ? ACCESS.pinOffFor(name) : name];
    }),
  );
  const submit = (event: FormEvent) => {
    event.preventDefault();
    take.mutate(undefined, {
      onSuccess: (who) => {
        enter(who);
        onDone();
      },
      onError: () => setPin(""),
    });
  };
  return (
    <form className="edit-form secrets" onSubmit={submit}>
      <div className="field-row">
        <WordField label={ACCESS.takeOverWho} value={personId} words={names} onChange={setPerson} />
        <LineField label={ACCESS.pin} value={pin} type="password" inputMode="numeric" autoComplete="off" onChange={setPin} />
      </div>
      <WriteFault error={take.error} />
      <button type="submit" className="button primary" disabled={take.isPending || pin === ""}>
        {ACCESS.change}
      </button>
    </form>
  );
}
