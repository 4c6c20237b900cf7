import { type FormEvent, useState } from "react";
import { TRIAL_ROOM } from "#words/en/rooms/trialRoom";
import { readNumber } from "../../../jobFile/jobDraft.ts";
import { LineField, WordField } from "../../../pieces/PlainFields.tsx";
import { SHOTS_A_FINISH, type ShotInJob } from "./trialDraft.ts";

interface TrialFinishProps {
  readonly finish: string;
  readonly shots: readonly ShotInJob[];
  onFinish(finish: string): void;
  onAdd(shot: ShotInJob): void;
  /** @param at place among `shots` */
  onTakeAway(at: number): void;
}

const BOARDS = [0, 40] as const;
const SPEEDS = [3, 40] as const;
const isIn = (value: unknown, [from, to]: readonly [number, number]): value is number =>
  typeof value === "number" && value >= from && value <= to;

/** The shots of one finish: a board, a speed, Enter; and those so far. */
export function TrialFinish({ finish, shots, onFinish, onAdd, onTakeAway }: TrialFinishProps) {
  const [board, setBoard] = useState("");
  const [speed, setSpeed] = useState("");
  const [read, setRead] = useState<string>("0.5");
  const [isTried, setTried] = useState(false);
  const boardAtPins = readNumber(board);
  const speedMph = readNumber(speed) ?? null;
  const isSpeed = speedMph === null || isIn(speedMph, SPEEDS);
  const add = (event: FormEvent) => {
    event.preventDefault();
    setTried(true);
    if (!isIn(boardAtPins, BOARDS) || !(speedMph === null || isIn(speedMph, SPEEDS))) return;
    onAdd({ finish, boardAtPins, sdBoards: Number(read), speedMph });
    setBoard("");
    setSpeed("");
    setTried(false);
  };
  return (
    <section className="plate trial-finish" aria-label={finish}>
      <div className="ball-work-head">
        <LineField label={TRIAL_ROOM.finish} value={finish} onChange={onFinish} />
        <p className="large-figure">{TRIAL_ROOM.count(shots.length, SHOTS_A_FINISH)}</p>
      </div>
      <form onSubmit={add}>
        <div className="field-row">
          <LineField
            label={TRIAL_ROOM.board}
            value={board}
            inputMode="decimal"
            problem={isTried && !isIn(boardAtPins, BOARDS) ? TRIAL_ROOM.notABoard : undefined}
            onChange={setBoard}
          />
          <LineField
            label={TRIAL_ROOM.speed}
            value={speed}
            inputMode="decimal"
            problem={isSpeed ? undefined : TRIAL_ROOM.notASpeed}
            onChange={setSpeed}
          />
        </div>
        <WordField label={TRIAL_ROOM.reading} value={read} words={TRIAL_ROOM.readings} onChange={setRead} />
        <button type="submit" className="button">
          {TRIAL_ROOM.add}
        </button>
      </form>
      {shots.length > 0 && (
        <ol className="trial-shots" aria-label={TRIAL_ROOM.shots}>
          {shots.map((shot, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: shots are told apart by their place only
            <li key={at}>
              <span>{TRIAL_ROOM.shot(shot.boardAtPins, shot.speedMph)}</span>
              <button type="button" className="take-away" aria-label={TRIAL_ROOM.takeAway(shot.boardAtPins)} onClick={() => onTakeAway(at)}>
                ×
              </button>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
