import type { SignedEntry } from "#contract/records/ticketWork";
import type { StageStanding } from "#engine/signed/entries";
import type { Work } from "#engine/signed/work";
import { BENCH } from "#words/en/rooms/bench";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { TakeBack } from "../../benchWork/TakeBack.tsx";
import { useSign } from "../../benchWork/useSign.ts";
import { useShopTimes } from "../../shop/zone.ts";

/** Something that was done: a side of the step at hand, or a step that was signed. */
export interface Moment {
  readonly entry: SignedEntry;
  readonly what: "side" | "signed";
}

/** What was done before now, latest first: the sides of the step at hand, then the signed steps. */
export function momentsOf({ sides, signed }: Work<SignedEntry>, { stage, sidesLeft }: StageStanding<SignedEntry>): readonly Moment[] {
  const done = stage.sideIds.filter((side) => !sidesLeft.includes(side));
  const ofStep = sides.filter(({ stageId, sidesDone }) => stageId === stage.id && sidesDone.some((side) => done.includes(side)));
  return [
    ...ofStep.map((entry): Moment => ({ entry, what: "side" })).reverse(),
    ...signed.map((entry): Moment => ({ entry, what: "signed" })).reverse(),
  ];
}

interface BackProps {
  readonly here: OnTheBench;
  readonly moment: Moment;
  onForward(): void;
}

/** Gone back: what was done there, and what can be done about it. Going back unsigns nothing. */
export function LookBack({ here, moment: { entry, what }, onForward }: BackProps) {
  const times = useShopTimes();
  const sign = useSign();
  const tool = abrasiveName(entry.abrasive);
  const name = stageName({ kind: entry.kind, what: entry.label });
  const sides = entry.sidesDone.map((side) => BENCH.up[side]).join(", ");
  return (
    <div className="bench-step bench-lookback">
      <h1>{what === "side" ? sides : tool === null ? name : BENCH.tool(tool, null)}</h1>
      <p className="bench-with">{BENCH.backAt(name, entry.initials, times.at(entry.at))}</p>
      {what === "signed" && <p className="note">{BENCH.backSigned}</p>}
      {what === "signed" && <TakeBack here={here} entry={entry} className="button" />}
      <div className="bench-buttons">
        {what === "side" && (
          <button
            type="button"
            className="button bench-button"
            onClick={() => {
              sign.takeBack(here, entry, BENCH.sideAgain);
              onForward();
            }}
          >
            {BENCH.takeBackSide}
          </button>
        )}
        <button type="button" className="button primary bench-button" onClick={onForward}>
          {BENCH.forward}
        </button>
      </div>
    </div>
  );
}
