import type { SignedInSession } from "#contract/records/account";
import { ACCESS } from "#words/en/rooms/access";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { announceSession } from "../../shop/sessionNews.ts";
import { answered, shop } from "../../shop/shopClient.ts";
import { usePeople } from "../../shop/usePeople.ts";
import { useSession } from "../../shop/useSession.tsx";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

/** Where one is signed in, or for an owner everybody; each can be ended. */
export function Sessions() {
  const sessions = useRead(["sessions"], () => answered(shop.sessions.$get()));
  return <Reading of={sessions}>{({ items }) => <SessionTable sessions={items} />}</Reading>;
}

function SessionTable({ sessions }: { readonly sessions: readonly SignedInSession[] }) {
  const times = useShopTimes();
  const { sessionId } = useSession();
  const people = usePeople().data ?? [];
  const end = useWrite((id: string) => answered(shop.sessions[":id"].$delete({ param: { id } })), ["sessions"]);
  const nameOf = (personId: string) => people.find(({ id }) => id === personId)?.name ?? "…";
  const words = ACCESS.sessionColumns;
  const columns: readonly Column<SignedInSession>[] = [
    { name: words.person, cell: ({ personId }) => nameOf(personId) },
    { name: words.since, kind: "day", cell: ({ madeAt }) => times.at(madeAt) },
    { name: words.seen, kind: "day", cell: ({ seenAt }) => times.at(seenAt) },
    { name: words.from, cell: ({ id, address }) => (id === sessionId ? ACCESS.here : address) },
    {
      name: ACCESS.end,
      kind: "press",
      cell: ({ id, personId, seenAt }) => (
        <button
          type="button"
          className="button"
          aria-label={ACCESS.endOf(nameOf(personId), times.at(seenAt))}
          disabled={end.isPending}
          onClick={() => end.mutate(id, { onSuccess: announceSession })}
        >
          {ACCESS.end}
        </button>
      ),
    },
  ];
  return (
    <>
      <WriteFault error={end.error} />
      <PlainTable name={ACCESS.sessions} columns={columns} rows={sessions} keyOf={({ id }) => id} />
    </>
  );
}
