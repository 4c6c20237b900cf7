import { SHOP_FRAME } from "#words/en/rooms/frame";
import { faultWords } from "./faultWords.ts";
import type { ShopFault } from "./shopClient.ts";

/** Why something was not kept, beside what was pressed: by field where there are fields, and whether somebody else was quicker. */
export function WriteFault({ error }: { readonly error: ShopFault | null }) {
  if (error === null) return null;
  if (error.isKind("changedMeanwhile"))
    return (
      <p role="alert" className="failed">
        {SHOP_FRAME.changedMeanwhile}
      </p>
    );
  if (error.problem === null)
    return (
      <p role="alert" className="failed">
        {SHOP_FRAME.away}
      </p>
    );
  return (
    <div role="alert">
      <ul className="failed">
        {error.fields.length === 0 ? <li>{faultWords(error)}</li> : error.fields.map(({ path, message }) => <li key={path}>{message}</li>)}
      </ul>
    </div>
  );
}
