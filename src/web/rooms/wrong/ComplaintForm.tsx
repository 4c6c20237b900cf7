import { SYMPTOM_WORDS } from "#words/en/diagnosis";
import { WRONG } from "#words/en/rooms/wrong";
import { PATTERN_WORDS } from "#words/en/screens";
import type { FieldProblem } from "../../client/protocol.ts";
import { Choices } from "../../pieces/Choices.tsx";
import { OneOf } from "../../pieces/OneOf.tsx";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { type ComplaintDraft, NOT_KNOWN } from "./complaintDraft.ts";

interface ComplaintFormProps {
  readonly draft: ComplaintDraft;
  readonly problems: readonly FieldProblem[];
  onChange(draft: ComplaintDraft): void;
}

/** The complaint in a minute: what hurts, all or only this one, how it came; the rest where somebody knows it. */
export function ComplaintForm({ draft, problems, onChange }: ComplaintFormProps) {
  // Steps were taken against what was thought then: another complaint begins anew.
  const set = (change: Partial<ComplaintDraft>) => onChange({ ...draft, steps: [], ...change });
  const figure = (
    key: "games" | "gamesSinceExtraction" | "track" | "beside" | "speedChange" | "revChange" | "playedShots",
    path: string,
  ) => (
    <LineField
      label={WRONG[key]}
      inputMode="text"
      value={draft[key]}
      problem={problems.find((problem) => problem.path === path)?.allowed}
      onChange={(value) => set({ [key]: value })}
    />
  );
  return (
    <section className="plate no-print">
      <h2>{WRONG.complaint}</h2>
      <Choices label={WRONG.symptoms} words={SYMPTOM_WORDS} chosen={draft.symptoms} onChange={(symptoms) => set({ symptoms })} />
      <OneOf label={WRONG.changed} value={draft.changed} words={WRONG.changedWords} onChange={(changed) => set({ changed })} />
      <OneOf label={WRONG.since} value={draft.since} words={WRONG.sinceWords} onChange={(since) => set({ since })} />
      <OneOf label={WRONG.hits} value={draft.hits} words={WRONG.hitsWords} onChange={(hits) => set({ hits })} />
      <OneOf label={WRONG.when} value={draft.when} words={WRONG.whenWords} onChange={(when) => set({ when })} />
      <Choices label={WRONG.found} words={WRONG.finds} chosen={draft.finds} onChange={(finds) => set({ finds })} />
      <div className="field-row">
        {figure("games", "use.games")}
        {figure("gamesSinceExtraction", "use.gamesSinceExtraction")}
        {figure("track", "use.trackMicroinch")}
        {figure("beside", "use.besideMicroinch")}
      </div>
      <h3>{WRONG.bowler}</h3>
      <OneOf label={WRONG.grip} value={draft.grip} words={WRONG.gripWords} onChange={(grip) => set({ grip })} />
      <OneOf label={WRONG.tired} value={draft.tired} words={WRONG.tiredWords} onChange={(tired) => set({ tired })} />
      <div className="field-row">
        {figure("speedChange", "release.speedChangeMph")}
        {figure("revChange", "release.revChangeRpm")}
      </div>
      <h3>{WRONG.lane}</h3>
      <div className="field-row">
        <WordField
          label={WRONG.oil}
          value={draft.oil}
          words={{ [NOT_KNOWN]: WRONG.oilUnknown, ...PATTERN_WORDS }}
          onChange={(oil) => set({ oil })}
        />
        {draft.oil !== NOT_KNOWN && figure("playedShots", "lane.playedShots")}
      </div>
      <OneOf label={WRONG.otherHouse} value={draft.otherHouse} words={WRONG.yesNo} onChange={(otherHouse) => set({ otherHouse })} />
      <OneOf label={WRONG.laneChanged} value={draft.laneChanged} words={WRONG.yesNo} onChange={(laneChanged) => set({ laneChanged })} />
    </section>
  );
}
