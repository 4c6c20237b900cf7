import { useEffect, useRef } from "react";
import { INTAKE } from "#words/en/rooms/intake";
import { COVER_WORDS } from "#words/en/screens";
import { Pills } from "../../pieces/Pills.tsx";
import { LineField } from "../../pieces/PlainFields.tsx";
import type { BallDraft, VisitDraft } from "./visitDraft.ts";

interface NewBowlerProps {
  readonly bowler: NonNullable<VisitDraft["bowler"]>;
  readonly tried: boolean;
  onChange(change: Partial<NonNullable<VisitDraft["bowler"]>>): void;
}

/** Somebody whom the shop has not seen before: a name is all that is needed. */
export function NewBowler({ bowler, tried, onChange }: NewBowlerProps) {
  return (
    <section className="counter-part">
      <h2>{INTAKE.newBowler}</h2>
      <div className="field-row">
        <LineField
          label={INTAKE.name}
          value={bowler.name}
          problem={tried && bowler.name.trim() === "" ? INTAKE.needsName : undefined}
          onChange={(name) => onChange({ name })}
        />
        <LineField label={INTAKE.phone} type="tel" value={bowler.phone} onChange={(phone) => onChange({ phone })} />
      </div>
    </section>
  );
}

interface NewBallProps {
  /** Whether its name is what is to be typed next. */
  readonly isNext: boolean;
  readonly ball: BallDraft;
  readonly tried: boolean;
  onChange(change: Partial<BallDraft>): void;
}

/** A ball that the shop has not seen before: its name is all that is needed, and a cover that nobody knows stays not known. */
export function NewBall({ ball, isNext, tried, onChange }: NewBallProps) {
  const place = useRef<HTMLElement>(null);
  const isWanted = useRef(isNext && ball.name === "");
  useEffect(() => {
    if (isWanted.current) place.current?.querySelector("input")?.focus();
  }, []);
  return (
    <section className="new-ball" ref={place}>
      <div className="field-row">
        <LineField
          label={INTAKE.ballName}
          value={ball.name}
          problem={tried && ball.name.trim() === "" ? INTAKE.needsBall : undefined}
          onChange={(name) => onChange({ name })}
        />
        <LineField label={INTAKE.serial} value={ball.serial} onChange={(serial) => onChange({ serial })} />
      </div>
      <Pills label={INTAKE.cover} words={COVER_WORDS} value={ball.cover} onChange={(cover) => onChange({ cover })} />
    </section>
  );
}
