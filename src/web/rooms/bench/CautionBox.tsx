import { BENCH } from "#words/en/rooms/bench";
import { messageText } from "#words/messageText";

/** One box when the hazard changes, not on every step; nothing is started or signed before it was seen. */
export function CautionBox({ ids, onSeen }: { readonly ids: readonly string[]; onSeen(): void }) {
  return (
    <div className="bench-cautions" role="note">
      <div>
        <strong>{BENCH.hazard}</strong>
        <ul>
          {ids.map((id) => (
            <li key={id}>{messageText({ id: `caution.${id}`, params: {} })}</li>
          ))}
        </ul>
      </div>
      <button type="button" className="button primary bench-button" onClick={onSeen}>
        {BENCH.seen}
      </button>
    </div>
  );
}
