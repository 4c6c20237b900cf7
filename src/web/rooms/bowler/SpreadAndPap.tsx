import type { Bowler } from "#contract/records/bowler";
import { BOWLER_ROLES, THROW_FIELDS } from "#contract/records/bowlerFields";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { BOWLER } from "#words/en/rooms/bowler";
import { describedForm } from "../../pieces/describedForm.ts";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { figureText } from "../../shop/typedValues.ts";
import { useEditing } from "../../shop/useEditing.ts";
import { useShopTimes, useSpeed } from "../../shop/zone.ts";
import { BOWLER_TOUCHES, type BowlerChange, changeBowler, readBowler } from "./changeBowler.ts";

/** How much the bowler varies from shot to shot, and where the axis leaves the ball. */
export function SpreadAndPap({ bowler }: { readonly bowler: Bowler }) {
  const speed = useSpeed();
  const { fields, typedOf, changeOf, factsOf } = describedForm(THROW_FIELDS, BOWLER, speed);
  const editing = useEditing({
    memory: `gritwright.bowler.spread.${bowler.id}`,
    thing: bowler,
    typedOf,
    send: (typed, made, changed) => changeBowler(bowler.id, made, changeOf(bowler, typed, changed) as BowlerChange),
    read: readBowler,
    touches: BOWLER_TOUCHES,
  });
  const usual = typedOf({ spread: TYPICAL_SPREAD });
  const unknown = (path: string) => (usual[path] === "" ? BOWLER.unknown : `${figureText(Number(usual[path]))}, ${BOWLER.usual}`);
  return (
    <EditPlate
      least={BOWLER_ROLES.change}
      title={BOWLER.spread}
      rows={factsOf(bowler, useShopTimes(), unknown).map(({ label, text }) => [label, text])}
      fields={fields}
      editing={editing}
    >
      <p className="note">{BOWLER.spreadWhy}</p>
    </EditPlate>
  );
}
