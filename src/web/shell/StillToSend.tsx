import { BENCH } from "#words/en/rooms/bench";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { useOutbox } from "../shop/useOutbox.tsx";

/** What the shop has not got yet: how much waits, and what it refused, until somebody has dealt with it. */
export function StillToSend() {
  const { outbox, waiting } = useOutbox();
  const refused = waiting.filter((write) => write.refused !== null);
  const unsent = waiting.length - refused.length;
  if (waiting.length === 0) return null;
  return (
    <section className="still-to-send no-print" aria-label={SHOP_FRAME.stillToSend} aria-live="polite">
      {unsent > 0 && <p>{BENCH.waits(unsent)}</p>}
      {refused.map(({ key, what, refused: why }) => (
        <p key={key}>
          {SHOP_FRAME.refused(what, why ?? "")}{" "}
          <button type="button" className="button" onClick={() => outbox.drop(key)}>
            {SHOP_FRAME.dealtWith}
          </button>
        </p>
      ))}
    </section>
  );
}
