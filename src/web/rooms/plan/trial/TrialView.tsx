import { useState } from "react";
import type { Line } from "#engine/delivery/bowler";
import { TRIAL_ROOM } from "#words/en/rooms/trialRoom";
import { launchAngle } from "#words/figures";
import { useComputed } from "../../../client/poolHere.ts";
import { saveText } from "../../../client/saveFile.ts";
import { valueAt } from "../../../jobFile/jobDraft.ts";
import type { Draft } from "../useDraft.ts";
import { TrialFinish } from "./TrialFinish.tsx";
import { TrialPicture } from "./TrialPicture.tsx";
import { finishesOf, keepShots, type ShotInJob, shotsOf, trialFile } from "./trialDraft.ts";

interface TrialViewProps {
  readonly draft: Draft;
  /** The line that the plan plays today; null as long as there is no plan. */
  readonly todaysLine: Line | null;
  onPlan(): void;
}

/** The one experiment that tells most: one ball on one line with two finishes, ten shots each. The shots stand in the job, so that its plan is weighed by them. */
export function TrialView({ draft, todaysLine, onPlan }: TrialViewProps) {
  const shots = shotsOf(draft.job);
  const [finishes, setFinishes] = useState<readonly [string, string]>(() => finishesOf(shots));
  const [dull, smooth] = finishes;
  const of = (finish: string) => shots.filter((shot) => shot.finish === finish);
  const rename = (at: 0 | 1) => (finish: string) => {
    keepShots(
      draft,
      shots.map((shot) => (shot.finish === finishes[at] ? { ...shot, finish } : shot)),
    );
    setFinishes(at === 0 ? [finish, smooth] : [dull, finish]);
  };
  const panel = (at: 0 | 1) => (
    <TrialFinish
      finish={finishes[at]}
      shots={of(finishes[at])}
      onFinish={rename(at)}
      onAdd={(shot) => keepShots(draft, [...shots, shot])}
      onTakeAway={(place) => keepShots(draft, without(shots, of(finishes[at])[place]))}
    />
  );
  return (
    <div className="trial">
      <h2>{TRIAL_ROOM.head(dull, smooth)}</h2>
      <p>{TRIAL_ROOM.why}</p>
      <TheLine draft={draft} todaysLine={todaysLine} />
      {panel(0)}
      <p className="note">{TRIAL_ROOM.between(smooth)}</p>
      {panel(1)}
      <Held draft={draft} shots={shots} />
      <div className="buttons no-print">
        <button type="button" className="button primary" disabled={shots.length === 0} onClick={onPlan}>
          {TRIAL_ROOM.toPlan}
        </button>
        <button
          type="button"
          className="button"
          disabled={shots.length === 0}
          onClick={() => saveText(trialFile(shots), "gritwright-trial.json", "application/json")}
        >
          {TRIAL_ROOM.save}
        </button>
        <button type="button" className="button" disabled={shots.length === 0} onClick={() => keepShots(draft, [])}>
          {TRIAL_ROOM.clear}
        </button>
      </div>
    </div>
  );
}

function without(shots: readonly ShotInJob[], gone: ShotInJob | undefined): readonly ShotInJob[] {
  return shots.filter((shot) => shot !== gone);
}

/** On which line all of them are thrown. */
function TheLine({ draft, todaysLine }: Pick<TrialViewProps, "draft" | "todaysLine">) {
  const named = [valueAt(draft.job, "line.laydownBoard"), valueAt(draft.job, "line.launchAngleDeg")];
  const [laydown, launch] = named;
  if (typeof laydown === "number" && typeof launch === "number")
    return (
      <p className="trial-line">
        {TRIAL_ROOM.onLine(laydown, launchAngle(launch))} {TRIAL_ROOM.lane}
      </p>
    );
  const play = (line: Line) => draft.setAll({ "line.laydownBoard": line.laydownBoard, "line.launchAngleDeg": line.launchAngleDeg });
  return (
    <div className="trial-line">
      <p>{TRIAL_ROOM.noLine}</p>
      {todaysLine !== null && (
        <button type="button" className="button" onClick={() => play(rounded(todaysLine))}>
          {TRIAL_ROOM.takeLine(rounded(todaysLine).laydownBoard, launchAngle(rounded(todaysLine).launchAngleDeg))}
        </button>
      )}
    </div>
  );
}

/** A line as a bowler can aim at it. */
function rounded({ laydownBoard, launchAngleDeg }: Line): Line {
  return { laydownBoard: Math.round(2 * laydownBoard) / 2, launchAngleDeg: Math.round(10 * launchAngleDeg) / 10 };
}

/** What the worlds say of it. */
function Held({ draft, shots }: { readonly draft: Draft; readonly shots: readonly ShotInJob[] }) {
  const told = useComputed(shots.length === 0 ? null : { kind: "trial", job: draft.job });
  if (shots.length === 0) return null;
  if (told.data === undefined) return <p role="status">{told.isError ? told.error.message : TRIAL_ROOM.working}</p>;
  if (told.data.kind === "problems")
    return (
      <ul role="alert">
        {told.data.problems.map(({ path, value, allowed }) => (
          <li key={path}>
            <code>{path}</code>: {value} ({allowed})
          </li>
        ))}
      </ul>
    );
  const { finishes, effectiveBefore, effectiveAfter, furtherNights, isThin } = told.data.trial;
  return (
    <section className="plate" aria-label={TRIAL_ROOM.picture}>
      <h3>{TRIAL_ROOM.picture}</h3>
      <TrialPicture finishes={finishes} shots={shots} isLeftHanded={valueAt(draft.job, "bowler.hand") === "left"} />
      <p>
        {TRIAL_ROOM.counts(effectiveBefore, effectiveAfter, furtherNights)} {isThin && TRIAL_ROOM.thin}
      </p>
    </section>
  );
}
