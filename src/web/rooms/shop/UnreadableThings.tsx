import { useState } from "react";
import { SHOP } from "#words/en/rooms/shop";
import { WordsField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, newKey, shop } from "../../shop/shopClient.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

const listed = () => answered(shop.unreadable.$get());
type SetAside = Awaited<ReturnType<typeof listed>>["items"][number];
type Raw = { readonly version: number; readonly document: string };

/** What the records could not read and set aside: what is wrong with each, what lies there, and putting it right. */
export function UnreadableThings() {
  const [isAsked, setAsked] = useState(false);
  const found = useRead(["unreadable"], listed, { enabled: isAsked });
  return (
    <>
      <p className="note">{SHOP.unreadableWhy}</p>
      {isAsked ? (
        <Reading of={found} isEmpty={({ items }) => items.length === 0} empty={SHOP.allReadable}>
          {({ items }) => items.map((item) => <OneThing key={item.id} found={item} />)}
        </Reading>
      ) : (
        <button type="button" className="button" onClick={() => setAsked(true)}>
          {SHOP.lookThrough}
        </button>
      )}
    </>
  );
}

function OneThing({ found: { kind, id, problems } }: { readonly found: SetAside }) {
  const [isOpen, setOpen] = useState(false);
  const raw = useRead(["unreadable", id], () => answered(shop.unreadable[":id"].$get({ param: { id } })), { enabled: isOpen });
  return (
    <article>
      <p>
        {SHOP.unreadableThing(SHOP.kinds[kind])} <code>{id}</code>
      </p>
      <ul>
        {problems.map(({ path, value, allowed }) => (
          <li key={path}>{SHOP.unreadableField(path, JSON.stringify(value), allowed)}</li>
        ))}
      </ul>
      {isOpen ? (
        <Reading of={raw}>{(read) => <Mending key={read.version} id={id} raw={read} />}</Reading>
      ) : (
        <button type="button" className="button" onClick={() => setOpen(true)}>
          {SHOP.seeRaw}
        </button>
      )}
    </article>
  );
}

function Mending({ id, raw }: { readonly id: string; readonly raw: Raw }) {
  const [text, setText] = useState(() => indented(raw.document));
  const [key] = useState(newKey);
  const document = parsed(text);
  const mend = useWrite(
    (json: { document: Record<string, unknown> }) =>
      answered(shop.unreadable[":id"].$post({ param: { id }, json, header: madeOn(raw) }, { headers: { "Idempotency-Key": key } })),
    ["unreadable", "backups"],
  );
  return (
    <>
      <WordsField label={SHOP.rawDocument} value={text} onChange={setText} problem={document === null ? SHOP.notJson : undefined} />
      <WriteFault error={mend.error} />
      <button
        type="button"
        className="button"
        disabled={document === null || mend.isPending}
        onClick={() => document !== null && mend.mutate({ document })}
      >
        {SHOP.mend}
      </button>
    </>
  );
}

function parsed(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}

/** One field a line, where it is JSON. */
function indented(document: string): string {
  const value = parsed(document);
  return value === null ? document : JSON.stringify(value, null, 1);
}
