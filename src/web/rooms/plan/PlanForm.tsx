import {
  ARROW_WORDS,
  BALL_JOB_WORDS,
  COVER_UNKNOWN,
  COVER_WORDS,
  HAND_WORDS,
  HOOK_WORD_TEXT,
  PATTERN_WORDS,
  PLAN_FORM,
  SPEED_WORD_TEXT,
} from "#words/en/screens";
import { type Json, valueAt } from "../../jobFile/jobDraft.ts";
import { Fold } from "../../pieces/Fold.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { DragEntry, OilDrag } from "./dragFields.tsx";
import { ChoiceEntry, NumberEntry, TextEntry } from "./fields.tsx";
import { type FormContent, FormContext, useForm } from "./formContext.ts";
import { CandidatesEntry, LimitsEntries } from "./limitFields.tsx";
import { ballSummary, bowlerSummary, laneSummary, lineSummary } from "./summaries.ts";
import { TaughtEntry } from "./TaughtEntry.tsx";

/** Everything the plan is computed from. Each part can be folded away and then says in a line what is in it. */
export function PlanForm(content: FormContent) {
  const { job } = content.draft;
  return (
    <FormContext value={content}>
      <form className="plan-form" onSubmit={(event) => event.preventDefault()} aria-label={PLAN_FORM.title}>
        <Fold title={PLAN_FORM.bowler} summary={bowlerSummary(job)} startsOpen="wide" turn={2}>
          <BowlerFields />
        </Fold>
        <Fold title={PLAN_FORM.ball} summary={ballSummary(job)} startsOpen="wide" turn={4}>
          <BallFields />
        </Fold>
        <Fold title={PLAN_FORM.lane} summary={laneSummary(job)} startsOpen="wide" turn={6}>
          <LaneFields />
        </Fold>
        <Fold title={PLAN_FORM.line} summary={lineSummary(job)} startsOpen="never">
          <p className="field-help">{PLAN_FORM.lineHelp}</p>
          <div className="field-row">
            <div>
              <NumberEntry path="line.laydownBoard" label={PLAN_FORM.laydown} unit="" />
              <DragEntry path="line.laydownBoard" label={PLAN_FORM.laydown} unit="" from={4} to={36} step={0.5} />
            </div>
            <div>
              <NumberEntry path="line.launchAngleDeg" label={PLAN_FORM.launch} unit="°" />
              <DragEntry path="line.launchAngleDeg" label={PLAN_FORM.launch} unit="°" from={-2} to={6} step={0.1} />
            </div>
          </div>
        </Fold>
        <Fold title={PLAN_FORM.limits} summary="" startsOpen="never">
          <CandidatesEntry />
          <TextEntry path="reason" label={PLAN_FORM.reason} />
          <LimitsEntries />
        </Fold>
      </form>
    </FormContext>
  );
}

const DELIVERY_NUMBERS = ["speedMph", "revRateRpm", "axisRotationDeg", "axisTiltDeg"] as const;

function BowlerFields() {
  const { draft, question } = useForm();
  const inWords = valueAt(draft.job, "bowler.speed") !== undefined || valueAt(draft.job, "bowler.hook") !== undefined;
  const switchTo = (kind: string): void => {
    const numbers = Object.fromEntries(
      DELIVERY_NUMBERS.map((key): [string, Json | undefined] => [
        `bowler.${key}`,
        kind === "words" ? undefined : (valueAt(question, `bowler.${key}`) as Json | undefined),
      ]),
    );
    draft.setAll({
      ...numbers,
      "bowler.speed": kind === "words" ? "medium" : undefined,
      "bowler.hook": kind === "words" ? "medium" : undefined,
    });
  };
  return (
    <>
      <TextEntry path="bowler.name" label={PLAN_FORM.name} />
      <div className="field-row">
        <ChoiceEntry path="bowler.hand" label={PLAN_FORM.hand} words={HAND_WORDS} fallback="right" />
        <OneOf
          label={PLAN_FORM.delivery}
          value={inWords ? "words" : "numbers"}
          words={{ numbers: PLAN_FORM.numbers, words: PLAN_FORM.words }}
          onChange={switchTo}
        />
      </div>
      {inWords ? (
        <div className="field-row">
          <ChoiceEntry path="bowler.speed" label={PLAN_FORM.speedWord} words={SPEED_WORD_TEXT} fallback="medium" />
          <ChoiceEntry path="bowler.hook" label={PLAN_FORM.hookWord} words={HOOK_WORD_TEXT} fallback="medium" />
        </div>
      ) : (
        <>
          <div className="field-row">
            <div>
              <NumberEntry path="bowler.speedMph" label={PLAN_FORM.speed} unit="mph" />
              <DragEntry path="bowler.speedMph" label={PLAN_FORM.speed} unit="mph" from={11} to={23} step={0.1} />
            </div>
            <div>
              <NumberEntry path="bowler.revRateRpm" label={PLAN_FORM.revs} unit="rpm" />
              <DragEntry path="bowler.revRateRpm" label={PLAN_FORM.revs} unit="rpm" from={50} to={600} step={5} />
            </div>
          </div>
          <div className="field-row">
            <NumberEntry path="bowler.axisRotationDeg" label={PLAN_FORM.rotation} unit="°" />
            <NumberEntry path="bowler.axisTiltDeg" label={PLAN_FORM.tilt} unit="°" />
          </div>
        </>
      )}
      <ChoiceEntry path="bowler.plays" label={PLAN_FORM.plays} words={ARROW_WORDS} fallback="" />
    </>
  );
}

function BallFields() {
  return (
    <>
      <TextEntry path="ball.name" label={PLAN_FORM.name} />
      <div className="field-row">
        <ChoiceEntry path="ball.cover" label={PLAN_FORM.cover} words={{ "": COVER_UNKNOWN, ...COVER_WORDS }} fallback="" />
        <ChoiceEntry path="ball.job" label={PLAN_FORM.job} words={BALL_JOB_WORDS} fallback="strike" />
      </div>
      <div className="field-row">
        <TextEntry path="ball.finish" label={PLAN_FORM.finish} help={PLAN_FORM.finishHelp} />
        <NumberEntry path="ball.raMicroinch" label={PLAN_FORM.ra} unit="µin" />
      </div>
      <Fold title={PLAN_FORM.core} summary="" startsOpen="never" level={3}>
        <div className="field-row">
          <NumberEntry path="ball.massLb" label={PLAN_FORM.mass} unit="lb" />
          <NumberEntry path="ball.rgIn" label={PLAN_FORM.rg} unit="in" />
        </div>
        <div className="field-row">
          <NumberEntry path="ball.differentialIn" label={PLAN_FORM.differential} unit="in" />
          <NumberEntry path="ball.intermediateDifferentialIn" label={PLAN_FORM.intermediate} unit="in" />
        </div>
        <NumberEntry path="ball.pinToPapIn" label={PLAN_FORM.pinToPap} unit="in" />
      </Fold>
    </>
  );
}

/** The pattern can be one that only a file can hold (an oil sheet, measured film); then choosing a named one replaces it. */
function LaneFields() {
  const { draft } = useForm();
  const fromFile = ["oilSheet", "filmPoints"].find((form) => valueAt(draft.job, `lane.${form}`) !== undefined);
  return (
    <div className="field-row">
      {fromFile === undefined ? (
        <ChoiceEntry path="lane.pattern" label={PLAN_FORM.pattern} words={PATTERN_WORDS} fallback="" />
      ) : (
        <div className="field">
          <label htmlFor="pattern-of-file">{PLAN_FORM.pattern}</label>
          <select
            id="pattern-of-file"
            value=""
            onChange={(event) => draft.setAll({ [`lane.${fromFile}`]: undefined, "lane.pattern": event.target.value })}
          >
            <option value="">{PLAN_FORM.patternFromFile}</option>
            {Object.entries(PATTERN_WORDS).map(([id, text]) => (
              <option key={id} value={id}>
                {text}
              </option>
            ))}
          </select>
        </div>
      )}
      <div>
        <NumberEntry path="lane.playedShots" label={PLAN_FORM.played} unit="" />
        <DragEntry path="lane.playedShots" label={PLAN_FORM.played} unit="" from={0} to={200} step={5} />
      </div>
      <OilDrag />
      <TaughtEntry />
    </div>
  );
}
