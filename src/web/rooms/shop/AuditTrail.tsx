import { useState } from "react";
import { Link } from "wouter";
import { type AuditEntry, THING_KINDS, type ThingKind } from "#contract/records/auditEntry";
import { SHOP } from "#words/en/rooms/shop";
import { WordField } from "../../pieces/PlainFields.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { usePeople } from "../../shop/usePeople.ts";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";

const KINDS: Readonly<Record<string, string>> = {
  "": SHOP.trailAll,
  ...Object.fromEntries(THING_KINDS.map((kind) => [kind, SHOP.kinds[kind]])),
};

/** Who did what, when, newest first, a page at a time. */
export function AuditTrail() {
  const [kind, setKind] = useState("");
  // Each page begins where the one before ended; the first has no beginning.
  const [pages, setPages] = useState<readonly (string | null)[]>([null]);
  return (
    <>
      <p className="note">{SHOP.trailWhy}</p>
      <WordField
        label={SHOP.trailKind}
        value={kind}
        words={KINDS}
        onChange={(chosen) => {
          setKind(chosen);
          setPages([null]);
        }}
      />
      {pages.map((after, i) => (
        <TrailPage
          key={`${kind} ${after}`}
          kind={kind}
          after={after}
          onEarlier={i === pages.length - 1 ? (next) => setPages([...pages, next]) : null}
        />
      ))}
    </>
  );
}

interface PageProps {
  readonly kind: string;
  readonly after: string | null;
  /** Null where the page after this one is shown already. */
  readonly onEarlier: ((next: string) => void) | null;
}

function TrailPage({ kind, after, onEarlier }: PageProps) {
  const times = useShopTimes();
  const query = { limit: "50", ...(kind === "" ? {} : { kind }), ...(after === null ? {} : { after }) } as const;
  const trail = useRead(["audit", kind, after], () => answered(shop.audit.$get({ query })));
  const people = usePeople().data;
  const words = SHOP.trailColumns;
  const columns: readonly Column<AuditEntry>[] = [
    { name: words.at, kind: "day", cell: ({ at }) => times.at(at) },
    { name: words.who, cell: ({ by }) => people?.find(({ id }) => id === by)?.name ?? SHOP.gonePerson },
    { name: words.did, cell: ({ did }) => SHOP.dids[did] },
    { name: words.what, cell: (entry) => thingOf(entry) },
    { name: words.fields, cell: ({ did, fields }) => (did === "create" ? "" : <code>{fields.join(", ")}</code>) },
  ];
  return (
    <Reading of={trail} isEmpty={({ items }) => items.length === 0} empty={SHOP.noTrail}>
      {({ items, next }) => (
        <>
          <PlainTable name={SHOP.trail} columns={columns} rows={items} keyOf={({ id }) => id} />
          {next !== null && onEarlier !== null && (
            <button type="button" className="button" onClick={() => onEarlier(next)}>
              {SHOP.earlier}
            </button>
          )}
        </>
      )}
    </Reading>
  );
}

/** Kinds that have a room of their own. */
const ROOMS: Partial<Record<ThingKind, string>> = { bowlers: "/bowlers", balls: "/balls", tickets: "/tickets" };

function thingOf({ kind, thingId }: AuditEntry) {
  const room = ROOMS[kind];
  return room === undefined ? SHOP.kinds[kind] : <Link href={`${room}/${thingId}`}>{SHOP.kinds[kind]}</Link>;
}
