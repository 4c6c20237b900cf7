import { type ComplaintSign, complaintScrap } from "#drawing/complaintScrap";
import { COUNTER_FINISHES } from "#engine/surface/finish";
import { INTAKE } from "#words/en/rooms/intake";
import { Picture } from "../../pieces/Picture.tsx";
import { PillSet, Pills } from "../../pieces/Pills.tsx";
import { WordField } from "../../pieces/PlainFields.tsx";
import type { BallDraft, FindId } from "./visitDraft.ts";

const SIGNS = Object.keys(INTAKE.complaints) as ComplaintSign[];
const STOPPING: readonly FindId[] = ["crack", "hollow sound"];
const CHANGED = { "only this one": INTAKE.changed["only this one"], "all balls": INTAKE.changed["all balls"] } as const;
const FINISHES: Readonly<Record<string, string>> = {
  "": INTAKE.wantedLater,
  ...Object.fromEntries(COUNTER_FINISHES.map((finish) => [finish, finish])),
};

interface WrongProps {
  readonly ball: BallDraft;
  /** Whether others came along, so that it has to be said which one this is. */
  readonly isOneOfSeveral: boolean;
  onChange(change: Partial<BallDraft>): void;
}

/** What is wrong with the ball, what is seen on it, and which finish it is to have where somebody knows that already. */
export function WhatIsWrong({ ball, isOneOfSeveral, onChange }: WrongProps) {
  const name = ball.name.trim() === "" ? INTAKE.newBall : ball.name;
  const toggle = (sign: ComplaintSign) => {
    const { symptoms } = ball;
    onChange({ symptoms: symptoms.includes(sign) ? symptoms.filter((one) => one !== sign) : [...symptoms, sign] });
  };
  return (
    <section className="counter-part">
      <h2>{isOneOfSeveral ? INTAKE.whatHurtsOf(name) : INTAKE.whatHurts}</h2>
      <div className="complaints">
        {SIGNS.map((sign) => (
          <button key={sign} type="button" className="complaint" aria-pressed={ball.symptoms.includes(sign)} onClick={() => toggle(sign)}>
            <span aria-hidden="true">
              <Picture svg={complaintScrap(`sign-${sign}`, sign, INTAKE.complaints[sign])} className="scrap" />
            </span>
            <span>{INTAKE.complaints[sign]}</span>
          </button>
        ))}
      </div>
      {ball.symptoms.includes("scratched") && (
        <>
          <Pills
            label={INTAKE.catches}
            words={INTAKE.catchWords}
            value={ball.scratches ?? ""}
            onChange={(scratches) => onChange({ scratches })}
          />
          {(ball.scratches ?? "") === "" && <p className="note">{INTAKE.catchWhy}</p>}
        </>
      )}
      <div className="pill-lines">
        <Pills label={INTAKE.whatChanged} words={CHANGED} value={changedOf(ball)} onChange={(whatChanged) => onChange({ whatChanged })} />
        <PillSet
          label={INTAKE.found}
          words={INTAKE.findings}
          chosen={ball.found}
          dashed={STOPPING}
          onChange={(found) => onChange({ found })}
        />
      </div>
      {!ball.sameAsLast && (
        <WordField label={INTAKE.wanted} value={ball.wanted} words={FINISHES} onChange={(wanted) => onChange({ wanted })} />
      )}
    </section>
  );
}

function changedOf({ whatChanged }: BallDraft): keyof typeof CHANGED | "" {
  return whatChanged === "not known" ? "" : whatChanged;
}
