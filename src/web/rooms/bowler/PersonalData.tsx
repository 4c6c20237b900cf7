import { useState } from "react";
import type { Bowler } from "#contract/records/bowler";
import { BOWLER } from "#words/en/rooms/bowler";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { saveFromShop } from "../../shop/shopFile.ts";
import { usePasswordAgain } from "../../shop/usePasswordAgain.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import type { OlderCopy } from "./StillIn.tsx";

interface PersonalDataProps {
  readonly bowler: Bowler;
  /** Takes what still holds the person. */
  onErased(stillIn: readonly OlderCopy[]): void;
}

/** What is kept of a person is handed out, or erased. Erasing asks first: nothing brings it back. */
export function PersonalData({ bowler, onErased }: PersonalDataProps) {
  const { id, name } = bowler;
  const [asks, setAsks] = useState(false);
  const [key] = useState(newKey);
  const { field, headers, isMissing } = usePasswordAgain();
  const save = useWrite((_: undefined) => saveFromShop(`/api/bowlers/${id}/personal-data`, "POST", "personal-data.zip"), ["audit"]);
  const erase = useWrite(
    async (_: undefined) => {
      const once = { headers: { "Idempotency-Key": key, ...headers } };
      const asked = shop.bowlers[":id"]["personal-data"].$delete({ param: { id } }, once);
      // Told here: what asks is gone from the page as soon as the bowler is read again.
      onErased((await answered(asked)).stillIn);
    },
    ["bowlers", "balls", "tickets", "visits", "search", "queue", "readings", "photos", "audit"],
  );
  return (
    <section className="plate">
      <h2>{BOWLER.personal}</h2>
      <p className="note">{BOWLER.exportWhy}</p>
      <div className="buttons">
        <button type="button" className="button" disabled={save.isPending} onClick={() => save.mutate(undefined)}>
          {BOWLER.export}
        </button>
        {!asks && (
          <button type="button" className="button" onClick={() => setAsks(true)}>
            {BOWLER.erase}
          </button>
        )}
      </div>
      <WriteFault error={save.error} />
      {asks && (
        <div role="alertdialog" aria-label={BOWLER.eraseAsk(name)} className="stop erase">
          <p>{BOWLER.eraseAsk(name)}</p>
          <ul>
            {BOWLER.eraseWhat.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {field}
          <div className="buttons">
            <button type="button" className="button" disabled={erase.isPending} onClick={() => setAsks(false)}>
              {BOWLER.eraseNo}
            </button>
            <button type="button" className="button" disabled={erase.isPending || isMissing} onClick={() => erase.mutate(undefined)}>
              {BOWLER.eraseYes}
            </button>
          </div>
          <WriteFault error={erase.error} />
        </div>
      )}
    </section>
  );
}
