import type { Price } from "#contract/records/money";
import { usualPrices, workIn } from "#contract/records/pricedWork";
import { HELD } from "#words/en/rooms/held";
import { COUNTER_FINISHES, INTAKE, SYMPTOMS } from "#words/en/rooms/intake";
import { COVER_WORDS } from "#words/en/screens";
import { ChargeChoice } from "../../pieces/ChargeChoice.tsx";
import { Choices } from "../../pieces/Choices.tsx";
import { LineField, WordField, WordsField } from "../../pieces/PlainFields.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { DidItWork } from "../held/DidItWork.tsx";
import { useLastTime, useStagesOf } from "./useStagesOf.ts";
import { type BallDraft, mustStop, pricingDraft, type WhatChanged } from "./visitDraft.ts";

interface BallWorkProps {
  readonly ball: BallDraft;
  readonly prices: readonly Price[];
  /** Whether somebody tried to take it in. */
  readonly tried: boolean;
  onChange(ball: BallDraft): void;
  onLeaveOut(): void;
}

/** One ball of the visit: what hurts, what was found, what is wanted. Everything but its name may stay empty. */
export function BallWork({ ball, prices, tried, onChange, onLeaveOut }: BallWorkProps) {
  const usual = usualPrices(workIn(useStagesOf(ball)), prices);
  const set = (change: Partial<BallDraft>) => onChange({ ...ball, ...change });
  return (
    <section className="plate ball-work" aria-label={ball.name === "" ? INTAKE.newBall : ball.name}>
      <div className="ball-work-head">
        <h3>{ball.name === "" ? INTAKE.newBall : ball.name}</h3>
        {ball.serial !== "" && ball.ballId !== null && <span className="serial">{ball.serial}</span>}
        <button type="button" className="button" onClick={onLeaveOut}>
          {INTAKE.leaveOut}
        </button>
      </div>
      {ball.ballId === null ? <NewBallFields ball={ball} set={set} /> : <SameAsLast ball={ball} set={set} />}
      <div className="field-row">
        {!ball.sameAsLast && (
          <WordField label={INTAKE.wanted} value={ball.wanted} words={FINISH_WORDS} onChange={(wanted) => set({ wanted })} />
        )}
        <ChargeChoice draft={pricingDraft(ball)} prices={prices} usual={usual} tried={tried} onChange={set} />
      </div>
      <Choices label={INTAKE.whatHurts} words={SYMPTOMS} chosen={ball.symptoms} onChange={(symptoms) => set({ symptoms })} />
      <Choices label={INTAKE.found} words={INTAKE.findings} chosen={ball.found} onChange={(found) => set({ found })} />
      {mustStop(ball) && (
        <p role="alert" className="stop">
          {INTAKE.stop}
        </p>
      )}
      <div className="field-row">
        <WordField
          label={INTAKE.whatChanged}
          value={ball.whatChanged}
          words={{ "": "–", ...INTAKE.changed }}
          onChange={(whatChanged) => set({ whatChanged: whatChanged as WhatChanged | "" })}
        />
        <WordsField label={INTAKE.words} value={ball.words} onChange={(words) => set({ words })} />
      </div>
    </section>
  );
}

const FINISH_WORDS: Readonly<Record<string, string>> = {
  "": INTAKE.wantedLater,
  ...Object.fromEntries(COUNTER_FINISHES.map((finish) => [finish, finish])),
};

interface PartProps {
  readonly ball: BallDraft;
  set(change: Partial<BallDraft>): void;
}

function NewBallFields({ ball, set }: PartProps) {
  return (
    <div className="field-row">
      <LineField label={INTAKE.ballName} value={ball.name} onChange={(name) => set({ name })} />
      <WordField
        label={INTAKE.cover}
        value={ball.cover}
        words={{ "": INTAKE.coverUnknown, ...COVER_WORDS }}
        onChange={(cover) => set({ cover: cover as BallDraft["cover"] })}
      />
      <LineField label={INTAKE.serial} value={ball.serial} onChange={(serial) => set({ serial })} />
    </div>
  );
}

/** Half the work is "same as last time": one press where there was a last time. */
function SameAsLast({ ball, set }: PartProps) {
  const times = useShopTimes();
  const id = ball.ballId ?? "";
  const last = useLastTime(id).data?.last;
  if (last === undefined) return null;
  if (last === null) return <p className="note">{INTAKE.noLastTime}</p>;
  return (
    <>
      <label className="choice same-as-last">
        <input type="checkbox" checked={ball.sameAsLast} onChange={({ target }) => set({ sameAsLast: target.checked })} />
        <span>{INTAKE.sameAsLast(last.ticket.finishAfter ?? "–", times.day(last.ticket.readyAt ?? last.ticket.receivedAt))}</span>
      </label>
      <DidItWork ticket={last.ticket} question={HELD.lastTime(last.ticket.finishAfter ?? "–")} />
    </>
  );
}
