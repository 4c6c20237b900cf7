import { useState } from "react";
import type { Bowler } from "#contract/records/bowler";
import { BOWLER } from "#words/en/rooms/bowler";
import { HOOK_WORD_TEXT, SPEED_WORD_TEXT } from "#words/en/screens";
import { type EditField, EditFields } from "../../pieces/EditForm.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { emptied } from "../../shop/emptied.ts";
import { useKept } from "../../shop/useKept.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useSpeed } from "../../shop/zone.ts";
import { BOWLER_TOUCHES, changeBowler } from "./changeBowler.ts";
import { type Delivery, deliveryOf, EMPTY_DELIVERY, type Way } from "./deliveryDraft.ts";

/** A delivery is added, never written over: what was known before is part of the bowler's history. */
export function AddDelivery({ bowler }: { readonly bowler: Bowler }) {
  const speed = useSpeed();
  const [draft, setDraft] = useKept(`gritwright.bowler.delivery.${bowler.id}`, () => EMPTY_DELIVERY);
  const [tried, setTried] = useState(false);
  const write = useWrite(
    (delivery: Delivery) => changeBowler(bowler.id, bowler, { deliveries: [...bowler.deliveries, delivery] }),
    BOWLER_TOUCHES,
  );
  const delivery = deliveryOf(draft, new Date().toISOString(), speed);
  const keep = () => {
    setTried(delivery === null);
    if (delivery !== null) write.mutate(delivery, { onSuccess: () => setDraft(emptied(draft, EMPTY_DELIVERY)) });
  };
  const place = `deliveries[${bowler.deliveries.length}].`;
  const problems = (write.error?.fields ?? []).map((problem) => ({ ...problem, path: problem.path.replace(place, "") }));
  const fields = draft.way === "numbers" ? numberFields(speed.unit) : WORD_FIELDS;
  const hasPlace = problems.some(({ path }) => fields.some((field) => field.path === path));
  return (
    <Fold title={BOWLER.add} summary={BOWLER.addWhy} startsOpen="never" level={3}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          keep();
        }}
      >
        <OneOf label={BOWLER.knownAs} value={draft.way} words={BOWLER.ways} onChange={(way: Way) => setDraft({ ...draft, way })} />
        <EditFields
          fields={fields}
          typed={draft.typed}
          problems={problems}
          onSet={(path, value) => setDraft({ ...draft, typed: { ...draft.typed, [path]: value } })}
        />
        {tried && delivery === null && (
          <p role="alert" className="field-problem">
            {BOWLER.nothingTyped}
          </p>
        )}
        {!hasPlace && <WriteFault error={write.error} />}
        <button type="submit" className="button" disabled={write.isPending}>
          {BOWLER.keepDelivery}
        </button>
      </form>
    </Fold>
  );
}

const { "word only": _inWords, ...MEASURED_HOWS } = BOWLER.hows;
const NOTE: EditField = { path: "note", label: BOWLER.note };

function numberFields(unit: string): readonly EditField[] {
  return [
    { path: "speedMph", label: BOWLER.speedIn(unit), as: "number" },
    { path: "revRateRpm", label: BOWLER.revsIn, as: "number" },
    { path: "axisRotationDeg", label: BOWLER.rotationIn, as: "number" },
    { path: "axisTiltDeg", label: BOWLER.tiltIn, as: "number" },
    { path: "how", label: BOWLER.how, words: MEASURED_HOWS },
    NOTE,
  ];
}

const WORD_FIELDS: readonly EditField[] = [
  { path: "speed", label: BOWLER.speedWord, words: { "": BOWLER.unknown, ...SPEED_WORD_TEXT } },
  { path: "hook", label: BOWLER.hookWord, words: { "": BOWLER.unknown, ...HOOK_WORD_TEXT } },
  NOTE,
];
