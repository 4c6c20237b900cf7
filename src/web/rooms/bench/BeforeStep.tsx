import { useState } from "react";
import { BENCH } from "#words/en/rooms/bench";
import { type BallState, isThisBall, isTimed, type PlannedStage, secondsRun } from "../../benchWork/guide.ts";
import { LineField } from "../../pieces/PlainFields.tsx";

interface ScanProps {
  readonly ticketId: string;
  readonly serial: string | null;
  onLooked(how: "scanned" | "on sight"): void;
}

/** Before the first cut: is it the right ball? A scanner types and ends with Enter. */
export function Scan({ ticketId, serial, onLooked }: ScanProps) {
  const [given, setGiven] = useState("");
  const [isWrong, setWrong] = useState(false);
  return (
    <form
      className="bench-scan"
      onSubmit={(event) => {
        event.preventDefault();
        if (isThisBall(given, ticketId, serial)) onLooked("scanned");
        else setWrong(true);
      }}
    >
      <LineField
        label={BENCH.scan}
        help={BENCH.scanWhy}
        value={given}
        problem={isWrong ? BENCH.scanWrong : undefined}
        onChange={(text) => {
          setGiven(text);
          setWrong(false);
        }}
      />
      <button type="submit" className="button primary bench-button">
        {BENCH.check}
      </button>
      <button type="button" className="button bench-button" onClick={() => onLooked("on sight")}>
        {BENCH.scanSkip}
      </button>
    </form>
  );
}

interface CutProps {
  readonly state: BallState;
  readonly stage: PlannedStage;
  onSaid(ranOn: boolean): void;
}

/** The page or its machine went in the middle of a side. Only who stood there knows whether the spinner went on. */
export function WasCut({ state, stage, onSaid }: CutProps) {
  return (
    <div className="bench-cautions">
      <h2>{BENCH.wasCut(Math.round(secondsRun(state, stage, 0)), stage.secondsPerSide ?? 0)}</h2>
      <p>{isTimed(stage) ? BENCH.didItRun : BENCH.didItGoOn}</p>
      <div className="bench-buttons">
        <button type="button" className="button primary bench-button" onClick={() => onSaid(false)}>
          {BENCH.itStood}
        </button>
        <button type="button" className="button bench-button" onClick={() => onSaid(true)}>
          {BENCH.itRanOn}
        </button>
      </div>
    </div>
  );
}
