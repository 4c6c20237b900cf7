import { useState } from "react";
import type { Account } from "#contract/records/account";
import type { Person } from "#contract/records/person";
import { ACCESS } from "#words/en/rooms/access";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { usePeople } from "../../shop/usePeople.ts";
import { useSession } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { ChangeSignIn, GiveSignIn } from "./SignInForms.tsx";

interface Row {
  readonly person: Person;
  readonly account: Account | null;
}

/** Who may come in, and as what; whoever has no password is given one here. */
export function SignIns() {
  const people = usePeople();
  const signIns = useRead(["sign-ins"], () => answered(shop["sign-ins"].$get()));
  const { state } = useSession();
  return (
    <>
      <p className="note">{state === "no passwords" ? ACCESS.firstWhy : ACCESS.signInsWhy}</p>
      <Reading of={people}>
        {(all) => (
          <Reading of={signIns}>
            {({ items }) => (
              <SignInTable
                rows={all
                  .map((person) => ({ person, account: items.find(({ personId }) => personId === person.id) ?? null }))
                  .filter(({ person, account }) => person.state === "works here" || account !== null)}
              />
            )}
          </Reading>
        )}
      </Reading>
    </>
  );
}

function SignInTable({ rows }: { readonly rows: readonly Row[] }) {
  const [open, setOpen] = useState<string | null>(null);
  const opened = rows.find(({ person }) => person.id === open) ?? null;
  const words = ACCESS.columns;
  const columns: readonly Column<Row>[] = [
    { name: words.person, cell: ({ person }) => <strong>{person.name}</strong> },
    { name: words.name, cell: ({ account }) => account?.signInName ?? ACCESS.none },
    { name: words.role, kind: "day", cell: ({ account }) => (account === null ? "–" : ACCESS.roles[account.role]) },
    { name: words.pin, cell: ({ account }) => pinWords(account) },
    {
      name: ACCESS.changeShort,
      kind: "press",
      cell: ({ person, account }) => (
        <button
          type="button"
          className="button"
          aria-label={account === null ? ACCESS.giveTo(person.name) : ACCESS.changeOf(person.name)}
          onClick={() => setOpen(person.id)}
        >
          {account === null ? ACCESS.give : ACCESS.changeShort}
        </button>
      ),
    },
  ];
  const close = () => setOpen(null);
  return (
    <>
      {opened !== null && opened.account === null && <GiveSignIn key={open} person={opened.person} onClose={close} />}
      {opened !== null && opened.account !== null && (
        <ChangeSignIn key={open} person={opened.person} account={opened.account} onClose={close} />
      )}
      <PlainTable name={ACCESS.signIns} columns={columns} rows={rows} keyOf={({ person }) => person.id} />
    </>
  );
}

function pinWords(account: Account | null): string {
  if (account === null) return "–";
  if (account.pinIsOff) return ACCESS.pinIsOff;
  return account.hasPin ? ACCESS.hasPin : ACCESS.noPin;
}
