import { ACCESS } from "#words/en/rooms/access";
import { BENCH } from "#words/en/rooms/bench";
import { SHOP_FRAME, WAITING } from "#words/en/rooms/frame";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import type { Waiting } from "../shop/outbox.ts";
import { useOutbox } from "../shop/useOutbox.tsx";
import { useSession } from "../shop/useSession.tsx";

/** What the shop has not got yet: how much waits, and what it refused, until somebody has dealt with it. */
export function StillToSend() {
  const { outbox, waiting } = useOutbox();
  const refused = waiting.filter((write) => write.refused !== null);
  const { personId } = useSession();
  const isOthers = ({ person, refused: why }: Waiting) => why === null && personId !== null && person !== null && person !== personId;
  const others = waiting.filter(isOthers).length;
  const unsent = waiting.length - refused.length - others;
  if (waiting.length === 0) return null;
  return (
    <section className="still-to-send no-print" aria-label={SHOP_FRAME.stillToSend} aria-live="polite">
      {unsent > 0 && <p>{BENCH.waits(unsent)}</p>}
      {!outbox.isKept() && <p role="alert">{WAITING.notKept}</p>}
      {others > 0 && <p>{ACCESS.othersWait(others)}</p>}
      {refused.map((write) =>
        write.current === null ? (
          <p key={write.key}>
            {SHOP_FRAME.refused(write.what, write.refused ?? "")}{" "}
            <button type="button" className="button" onClick={() => outbox.drop(write.key)}>
              {SHOP_FRAME.dealtWith}
            </button>
          </p>
        ) : (
          <BothVersions key={write.key} write={write} onSend={() => outbox.sendOver(write.key)} onLeave={() => outbox.drop(write.key)} />
        ),
      )}
    </section>
  );
}

interface BothVersionsProps {
  readonly write: Waiting;
  onSend(): void;
  onLeave(): void;
}

/** Somebody else was quicker: what was written here and what the shop has, side by side. */
function BothVersions({ write, onSend, onLeave }: BothVersionsProps) {
  const mine = fieldsOf(write.path.endsWith("/move") ? { state: (write.body as { to: unknown }).to } : write.body);
  const theirs = fieldsOf(write.current);
  return (
    <div className="both-versions">
      <p>{WAITING.conflict(write.what)}</p>
      <ul>
        {Object.keys(mine).map((field) => (
          <li key={field}>{WAITING.both(FIELD_WORDS[field] ?? field, shown(field, mine[field]), shown(field, theirs[field]))}</li>
        ))}
      </ul>
      <button type="button" className="button" onClick={onSend}>
        {WAITING.sendMine}
      </button>{" "}
      <button type="button" className="button" onClick={onLeave}>
        {WAITING.leaveTheirs}
      </button>
    </div>
  );
}

const FIELD_WORDS: Readonly<Record<string, string>> = {
  state: TICKET.state,
  finishAfter: TICKET.choose,
  stages: TICKET.work,
  complaint: TICKET.complaint,
  findings: TICKET.findings,
  stops: TICKET.stops,
};

function fieldsOf(thing: unknown): Readonly<Record<string, unknown>> {
  return typeof thing === "object" && thing !== null ? (thing as Record<string, unknown>) : {};
}

function shown(field: string, value: unknown): string {
  if (field === "state" && typeof value === "string" && value in TICKET_STATE_WORDS)
    return TICKET_STATE_WORDS[value as keyof typeof TICKET_STATE_WORDS];
  if (Array.isArray(value)) return value.map((one) => String(fieldsOf(one).what ?? fieldsOf(one).why ?? one)).join(", ");
  return value === null || value === undefined || value === "" ? WAITING.nothing : String(value);
}
