import type { Bowler } from "#contract/records/bowler";
import { BOWLER_ROLES, CONTACT_FIELDS } from "#contract/records/bowlerFields";
import { BOWLER } from "#words/en/rooms/bowler";
import { describedForm } from "../../pieces/describedForm.ts";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { useEditing } from "../../shop/useEditing.ts";
import { useShopTimes, useSpeed } from "../../shop/zone.ts";
import { BOWLER_TOUCHES, type BowlerChange, changeBowler, readBowler } from "./changeBowler.ts";

/** Who the bowler is and how to reach them; for one under age, the guardian and when they agreed. */
export function Contacts({ bowler }: { readonly bowler: Bowler }) {
  const { fields, typedOf, changeOf, factsOf } = describedForm(CONTACT_FIELDS, BOWLER, useSpeed());
  const editing = useEditing({
    memory: `gritwright.bowler.contacts.${bowler.id}`,
    thing: bowler,
    typedOf,
    send: (typed, made, changed) => changeBowler(bowler.id, made, changeOf(bowler, typed, changed) as BowlerChange),
    read: readBowler,
    touches: BOWLER_TOUCHES,
  });
  const { guardian } = bowler;
  return (
    <EditPlate
      least={BOWLER_ROLES.change}
      title={BOWLER.contacts}
      rows={factsOf(bowler, useShopTimes()).map(({ label, text }) => [label, text])}
      fields={fields}
      editing={editing}
    >
      {guardian !== null && guardian.consentOn === null && <p className="note">{BOWLER.consentMissing}</p>}
    </EditPlate>
  );
}
