import { useState } from "react";
import { Button, ProgressBar } from "react-aria-components";
import { markDisc } from "#drawing/markDisc";
import { FILE_PAINT, PAGE_PAINT, type Paint } from "#drawing/paint";
import { plateauBar } from "#drawing/plateauBar";
import { textureSwatch } from "#drawing/texture";
import { parseFinish } from "#engine/surface/finish";
import { DESIGN } from "#words/en/screens";
import { Computing } from "../../pieces/Computing.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { IntervalBar } from "../../pieces/IntervalBar.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { Picture, PictureForWidth } from "../../pieces/Picture.tsx";
import { CandidateTable } from "../plan/CandidateTable.tsx";
import { ChoiceEntry, NumberEntry, TextEntry } from "../plan/fields.tsx";
import { FormContext } from "../plan/formContext.ts";
import { Verdict } from "../plan/Verdict.tsx";
import { SAMPLE_DRAFT, SAMPLE_LOSSES, SAMPLE_PLANS, SAMPLE_PROBLEMS } from "./samples.ts";

const FINISHES = ["360", "500", "1000", "2000", "3000", "4000", "5000", "500 + polish", "1000 + polish", "4000 + polish"];
const SWATCHES = Object.fromEntries(FINISHES.map((f, i) => [f, textureSwatch(`piece-${i}`, parseFinish(f), 30, PAGE_PAINT)]));

/** The same piece in each of its states. */
const LONG_WORK = [
  { status: "idle", progress: null, hint: DESIGN.longWorkHint, failure: null },
  { status: "working", progress: { done: 2, of: 5, said: DESIGN.longWorkPart }, hint: null, failure: null },
  { status: "stopped", progress: null, hint: null, failure: null },
  { status: "failed", progress: null, hint: null, failure: DESIGN.longWorkFailed },
] as const;
const DISC_MARKS = [
  { right: -0.55, up: -0.52 },
  { right: -0.2, up: -0.28 },
  { right: -0.06, up: 0.22 },
];
const nothing = () => undefined;

/** Every piece in every state, to be looked at: figures are invented. */
export function DesignRoom() {
  const [word, setWord] = useState("one");
  const [ticked, setTicked] = useState<readonly string[]>(["2000"]);
  const toggle = (finish: string, on: boolean): void => setTicked(on ? [...ticked, finish] : ticked.filter((f) => f !== finish));
  return (
    <main id="answer" className="design-room" tabIndex={-1}>
      <h1>{DESIGN.title}</h1>
      <p className="note">{DESIGN.invented}</p>
      <h2>{DESIGN.colours}</h2>
      <ul className="colour-list">
        {(Object.keys(FILE_PAINT) as (keyof Paint)[]).map((name) => (
          <li key={name}>
            <span className={`colour-chip colour-${name}`} />
            {name}
          </li>
        ))}
      </ul>
      <h2>{DESIGN.textures}</h2>
      <ul className="texture-list">
        {FINISHES.map((f, i) => (
          <li key={f}>
            <Picture svg={textureSwatch(`large-${i}`, parseFinish(f), 96, PAGE_PAINT)} className="" />
            <Picture svg={SWATCHES[f] ?? ""} className="swatch" />
            {f}
          </li>
        ))}
      </ul>
      <h2>{DESIGN.verdicts}</h2>
      {SAMPLE_PLANS.map((plan, i) => (
        <Verdict key={plan.pick?.sure ?? "none"} plan={plan} isFinal={i > 0} swatch={SWATCHES[plan.pick?.finish ?? ""] ?? null} />
      ))}
      <h2>{DESIGN.losses}</h2>
      <div className="two-columns">
        {SAMPLE_LOSSES.map((input, i) => (
          <PictureForWidth
            key={input.cliff ?? "none"}
            className="loss-chart"
            svg={{
              lying: plateauBar(input, { paint: PAGE_PAINT, id: `sample-${i}` }),
              upright: plateauBar(input, { layout: "upright", paint: PAGE_PAINT, id: `sample-up-${i}` }),
            }}
          />
        ))}
      </div>
      <h2>{DESIGN.table}</h2>
      <CandidateTable plan={SAMPLE_PLANS[1]} swatches={SWATCHES} shown={ticked} compared={ticked} onShow={toggle} onCompare={toggle} />
      <h2>{DESIGN.fields}</h2>
      <FormContext value={{ draft: SAMPLE_DRAFT, problems: SAMPLE_PROBLEMS, question: null }}>
        <div className="field-row">
          <NumberEntry path="filled" label={DESIGN.filled} unit="mph" />
          <NumberEntry path="empty" label={DESIGN.empty} unit="rpm" help={DESIGN.help} />
          <NumberEntry path="wrong" label={DESIGN.wrong} unit="°" />
        </div>
        <div className="field-row">
          <TextEntry path="text" label={DESIGN.filled} />
          <ChoiceEntry path="choice" label={DESIGN.choice} words={{ one: DESIGN.one, two: DESIGN.two }} fallback="one" />
          <ChoiceEntry path="wrongChoice" label={DESIGN.wrong} words={{ one: DESIGN.one, two: DESIGN.two }} fallback="one" />
        </div>
      </FormContext>
      <OneOf label={DESIGN.choice} value={word} words={{ one: DESIGN.one, two: DESIGN.two }} onChange={setWord} />
      <h2>{DESIGN.buttons}</h2>
      <div className="buttons">
        <Button>{DESIGN.ready}</Button>
        <Button isDisabled>{DESIGN.off}</Button>
      </div>
      <h2>{DESIGN.progress}</h2>
      {[0, 40, 100].map((value) => (
        <ProgressBar key={value} aria-label={`${DESIGN.progress} ${value} %`} value={value} className="progress-bar">
          <span className="progress-track">
            <span className="progress-fill" style={{ width: `${value}%` }} />
          </span>
        </ProgressBar>
      ))}
      <h2>{DESIGN.longWork}</h2>
      {LONG_WORK.map((state) => (
        <Computing key={state.status} {...state} words={DESIGN.longWorkWords} onCompute={nothing} onStop={nothing} />
      ))}
      <h2>{DESIGN.interval}</h2>
      <IntervalBar low={0.2} value={0.35} high={0.6} name={DESIGN.interval} />
      <IntervalBar low={0.7} value={0.9} high={1} said={0.55} name={DESIGN.interval} />
      <h2>{DESIGN.disc}</h2>
      <Picture svg={markDisc(DISC_MARKS, [{ right: 0.45, up: 0.2 }], "sample-disc")} className="mark-disc" />
      <h2>{DESIGN.folds}</h2>
      <Fold title={DESIGN.folded} summary={DESIGN.summary} startsOpen="never" level={3}>
        <p>{DESIGN.inside}</p>
      </Fold>
      <Fold title={DESIGN.open} summary={DESIGN.summary} startsOpen="always" level={3}>
        <p>{DESIGN.inside}</p>
      </Fold>
      <h2>{DESIGN.trouble}</h2>
      <p className="trouble">{DESIGN.sentence}</p>
    </main>
  );
}
