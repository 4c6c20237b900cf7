import { useRef, useState } from "react";
import { ASSUMPTION_IDS, ASSUMPTIONS, type AssumptionId } from "#engine/assumptions";
import type { FinishPlan } from "#engine/planning/plan";
import { assumptionFigures, assumptionName } from "#words/assumptionText";
import { MEANING, MEANINGS, type MeaningId } from "#words/en/rooms/meanings";
import { PLAN_ANSWER } from "#words/en/screens";

/** What each figure rests on: families of assumptions, and the page of the model. */
const RESTS: Readonly<Record<MeaningId, { readonly families: readonly string[]; readonly page: string }>> = {
  chance: { families: ["carry"], page: "carry.md" },
  line: { families: ["friction", "film"], page: "finish-plan.md" },
  hookAndRoll: { families: ["friction", "filmReach", "carriedOil", "roughness", "film"], page: "friction.md" },
  entry: { families: ["friction", "roll"], page: "averaged-motion.md" },
  slip: { families: ["friction", "filmReach"], page: "averaged-motion.md" },
  room: { families: ["carry"], page: "finish-plan.md" },
  keeps: { families: ["fade"], page: "fade.md" },
  todaysLine: { families: ["friction", "filmReach", "roughness"], page: "finish-plan.md" },
};

const IDS = Object.keys(MEANINGS) as readonly MeaningId[];

/** Every figure of the table, one tap from what it means: in words, as an equation, on which assumptions, from where. */
export function Meanings({ metric }: Pick<FinishPlan, "metric">) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [shown, setShown] = useState<MeaningId>("chance");
  const names: Readonly<Record<MeaningId, string>> = { ...PLAN_ANSWER.columns, chance: PLAN_ANSWER.metric[metric] };
  return (
    <section className="meanings no-print" aria-label={MEANING.all}>
      <h2>{MEANING.all}</h2>
      <div className="choices-words">
        {IDS.map((id) => (
          <button
            key={id}
            type="button"
            className="button"
            onClick={() => {
              setShown(id);
              dialog.current?.showModal();
            }}
          >
            {names[id]}
          </button>
        ))}
      </div>
      <dialog ref={dialog} className="plate meaning" aria-label={MEANING.title(names[shown])}>
        <OneMeaning id={shown} name={names[shown]} />
        <button type="button" className="button primary" onClick={() => dialog.current?.close()}>
          {MEANING.close}
        </button>
      </dialog>
    </section>
  );
}

function OneMeaning({ id, name }: { readonly id: MeaningId; readonly name: string }) {
  const { what, equation } = MEANINGS[id];
  const { families, page } = RESTS[id];
  const rests = ASSUMPTION_IDS.filter((one) => families.includes(one.split(".")[0]));
  return (
    <>
      <h2>{MEANING.title(name)}</h2>
      <p>{what}</p>
      <h3>{MEANING.equation}</h3>
      <p className="equation">{equation}</p>
      <h3>{MEANING.rests}</h3>
      <ul>
        {rests.map((one) => (
          <li key={one}>
            {assumptionName(one)}: {figuresOf(one)}. <small translate="no">{MEANING.from(ASSUMPTIONS[one].source)}</small>
          </li>
        ))}
      </ul>
      <p className="note">{MEANING.page(page)}</p>
    </>
  );
}

function figuresOf(id: AssumptionId): string {
  const { value, range } = assumptionFigures({ ...ASSUMPTIONS[id], id });
  return MEANING.taken(value, range, ASSUMPTIONS[id].mark);
}
