import { useState } from "react";
import type { Lane } from "#contract/records/place";
import { COUNTER_FINISHES } from "#engine/surface/finish";
import { SHOT_NOTES } from "#words/en/rooms/lanes";
import { Fold } from "../../pieces/Fold.tsx";
import { LineField, WordField, WordsField } from "../../pieces/PlainFields.tsx";
import { newKey } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useSpeed } from "../../shop/zone.ts";
import { Rack } from "./Rack.tsx";
import { emptyShot, type Left, nextShot, noteOf, problemsOf, type ShotDraft } from "./shotDraft.ts";
import { Taps } from "./Taps.tsx";
import { WhoseShot } from "./WhoseShot.tsx";

/** Left so often that one tap writes it down (common practice). */
const QUICK_LEAVES: readonly (readonly number[])[] = [[10], [7], [9], [8], [4], [6], [3, 10], [6, 10]];

interface ShotNoteFormProps {
  readonly lane: Lane;
  readonly patternId: string | null;
}

/** A shot in three taps: when it turned, how it came in, what was left. */
export function ShotNoteForm({ lane, patternId }: ShotNoteFormProps) {
  const [draft, setDraft] = useKept(`gritwright.shot.${lane.id}`, () => emptyShot(newKey()));
  const [sent, setSent] = useState<string | null>(null);
  const { outbox, waiting } = useOutbox();
  const { unit, mph } = useSpeed();
  const where = { houseId: lane.houseId, laneId: lane.id, patternId, mph };
  const problems = problemsOf(noteOf(draft, "unseen", { ...where, at: new Date().toISOString() }));
  const isRight = Object.keys(problems).length === 0;
  const set = (change: Partial<ShotDraft>) => setDraft((old) => ({ ...old, ...change }));
  const keep = (left: Left) => {
    if (!isRight) return;
    const body = noteOf(draft, left, { ...where, at: new Date().toISOString() });
    outbox.add({ key: draft.key, path: "/api/shot-notes", body, what: SHOT_NOTES.what(draft.ball?.name ?? null, leaveWords(left)) });
    setSent(draft.key);
    setDraft(nextShot(draft, newKey()));
  };
  return (
    <section className="plate shot-note no-print">
      <h2>{SHOT_NOTES.title}</h2>
      <WhoseShot ball={draft.ball} onChange={(ball, finish) => set({ ball, finish })} />
      <Taps label={SHOT_NOTES.turned} words={SHOT_NOTES.turnedWords} value={draft.turned} onChange={(turned) => set({ turned })} />
      <Taps label={SHOT_NOTES.arrived} words={SHOT_NOTES.arrivedWords} value={draft.arrived} onChange={(arrived) => set({ arrived })} />
      <div className="what-was-left">
        <Rack pins={draft.pins} onChange={(pins) => set({ pins })} />
        <fieldset className="choices">
          <legend>{SHOT_NOTES.quick}</legend>
          <div className="choices-words">
            <button type="button" className="button" disabled={!isRight} onClick={() => keep("strike")}>
              {SHOT_NOTES.strike}
            </button>
            {QUICK_LEAVES.map((pins) => (
              <button key={pins.join()} type="button" className="button" disabled={!isRight} onClick={() => keep(pins)}>
                {pins.join("-")}
              </button>
            ))}
          </div>
        </fieldset>
      </div>
      <button
        type="button"
        className="button primary wide"
        disabled={!isRight}
        onClick={() => keep(draft.pins.length === 0 ? "unseen" : draft.pins)}
      >
        {draft.pins.length === 0 ? SHOT_NOTES.keepUnseen : SHOT_NOTES.keepLeave(leaveWords(draft.pins))}
      </button>
      <p role="status">{sent !== null && (waiting.some(({ key }) => key === sent) ? SHOT_NOTES.waits : SHOT_NOTES.kept)}</p>
      <Fold title={SHOT_NOTES.more} summary={SHOT_NOTES.moreSummary} startsOpen="never" level={3}>
        <MoreOfShot draft={draft} problems={problems} unit={unit} set={set} />
      </Fold>
    </section>
  );
}

function leaveWords(left: Left): string {
  if (left === "strike") return SHOT_NOTES.strike;
  return left === "unseen" ? SHOT_NOTES.notSeen : [...left].sort((a, b) => a - b).join("-");
}

interface MoreProps {
  readonly draft: ShotDraft;
  readonly problems: ReturnType<typeof problemsOf>;
  readonly unit: string;
  set(change: Partial<ShotDraft>): void;
}

const FIGURES = [
  ["arrows", SHOT_NOTES.arrows],
  ["breakpointBoard", SHOT_NOTES.breakpointBoard],
  ["breakpointFt", SHOT_NOTES.breakpointFt],
  ["atPins", SHOT_NOTES.atPins],
  ["game", SHOT_NOTES.game],
] as const;

function MoreOfShot({ draft, problems, unit, set }: MoreProps) {
  return (
    <>
      <div className="field-row">
        {FIGURES.map(([field, label]) => (
          <LineField
            key={field}
            label={label}
            inputMode="decimal"
            value={draft[field]}
            problem={problems[field]}
            onChange={(value) => set({ [field]: value })}
          />
        ))}
        <LineField
          label={SHOT_NOTES.speed(unit)}
          inputMode="decimal"
          value={draft.speed}
          problem={problems.speed}
          onChange={(speed) => set({ speed })}
        />
        <WordField
          label={SHOT_NOTES.speedAt}
          value={draft.speedAt}
          words={SHOT_NOTES.speedPlaces}
          onChange={(speedAt) => set({ speedAt })}
        />
        <WordField
          label={SHOT_NOTES.finish}
          value={draft.finish}
          words={finishWords(draft.finish)}
          onChange={(finish) => set({ finish })}
        />
      </div>
      <WordsField label={SHOT_NOTES.note} value={draft.note} problem={problems.note} onChange={(note) => set({ note })} />
    </>
  );
}

function finishWords(chosen: string): Readonly<Record<string, string>> {
  const known = [...COUNTER_FINISHES, ...(chosen === "" ? [] : [chosen])];
  return { "": SHOT_NOTES.finishUnknown, ...Object.fromEntries(known.map((finish) => [finish, finish])) };
}
