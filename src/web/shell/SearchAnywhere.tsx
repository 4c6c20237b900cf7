import { type ReactNode, useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import { SEARCH } from "#words/en/rooms/search";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { LineField } from "../pieces/PlainFields.tsx";
import { Reading } from "../shop/Reading.tsx";
import { answered, shop } from "../shop/shopClient.ts";
import { useRead } from "../shop/useShop.ts";

const LEAST_LETTERS = 2;
const KEY = "/";

/** Opens from every room with `/`, or with its button: balls, bowlers and open tickets by name or number. */
export function SearchAnywhere() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [isOpen, setOpen] = useState(false);
  useEffect(() => {
    const open = (event: KeyboardEvent): void => {
      if (event.key !== KEY || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      event.preventDefault();
      setOpen(true);
    };
    addEventListener("keydown", open);
    return () => removeEventListener("keydown", open);
  }, []);
  useEffect(() => {
    if (isOpen) dialog.current?.showModal();
  }, [isOpen]);
  const close = () => dialog.current?.close();
  return (
    <>
      <button type="button" className="button search-button" title={SEARCH.openKey} onClick={() => setOpen(true)}>
        {SEARCH.open}
      </button>
      {isOpen && (
        <dialog ref={dialog} className="plate search-anywhere" aria-label={SEARCH.title} onClose={() => setOpen(false)}>
          <Search onFollow={close} />
          <button type="button" className="button" onClick={close}>
            {SEARCH.close}
          </button>
        </dialog>
      )}
    </>
  );
}

/** Where a `/` belongs to what is being typed. */
function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || ["INPUT", "TEXTAREA", "SELECT"].includes(target.tagName));
}

function Search({ onFollow }: { onFollow(): void }) {
  const [words, setWords] = useState("");
  const asked = words.trim();
  const isAsked = asked.length >= LEAST_LETTERS;
  const found = useRead(["search", asked], () => answered(shop.search.$get({ query: { words: asked } })), { enabled: isAsked });
  const queue = useRead(["queue"], () => answered(shop.queue.$get()), { enabled: isAsked });
  const tickets = (queue.data?.items ?? []).filter((item) => isNamed(asked, `${item.ballName} ${item.bowlerName ?? ""}`));
  return (
    <>
      <LineField label={SEARCH.words} help={SEARCH.help} type="search" value={words} onChange={setWords} />
      {isAsked && (
        <Reading of={found}>
          {({ balls, bowlers }) => (
            // A line that is followed closes the search; the links themselves are what takes the focus.
            // biome-ignore lint/a11y/noStaticElementInteractions: see above
            // biome-ignore lint/a11y/useKeyWithClickEvents: Enter on a link is a click too
            <div onClick={onFollow}>
              {balls.length + bowlers.length + tickets.length === 0 && <p className="nothing">{SEARCH.none}</p>}
              <Lines title={SEARCH.balls} rows={balls.map(({ id, name, serial }) => [`/balls/${id}`, name, serial ?? ""])} />
              <Lines title={SEARCH.bowlers} rows={bowlers.map(({ id, name, phone }) => [`/bowlers/${id}`, name, phone ?? ""])} />
              <Lines
                title={SEARCH.tickets}
                rows={tickets.map(({ ticket, ballName, bowlerName }) => [
                  `/tickets/${ticket.id}`,
                  [ballName, bowlerName].filter((part) => part !== null).join(", "),
                  TICKET_STATE_WORDS[ticket.state],
                ])}
              />
            </div>
          )}
        </Reading>
      )}
    </>
  );
}

/** Whether every word that was asked for begins a word of the name. */
function isNamed(asked: string, name: string): boolean {
  const words = name.toLowerCase().split(/\s+/);
  return asked
    .toLowerCase()
    .split(/\s+/)
    .every((one) => words.some((word) => word.startsWith(one)));
}

interface LinesProps {
  readonly title: string;
  readonly rows: readonly (readonly [path: string, name: string, beside: string])[];
}

function Lines({ title, rows }: LinesProps): ReactNode {
  if (rows.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul className="found">
        {rows.map(([path, name, beside]) => (
          <li key={path}>
            <Link href={path}>
              <strong>{name}</strong> <span className="serial">{beside}</span>
            </Link>
          </li>
        ))}
      </ul>
    </>
  );
}
