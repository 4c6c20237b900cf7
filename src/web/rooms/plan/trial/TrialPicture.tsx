import type { Interval } from "#engine/planning/plan";
import { finishText } from "#engine/surface/finish";
import type { TrialOfFinish } from "#tasks/trialReport";
import { TRIAL_ROOM } from "#words/en/rooms/trialRoom";
import { fixed } from "#words/figures";
import type { ShotInJob } from "./trialDraft.ts";

const WIDE = 600;
const ROW = 96;
/** Name of the finish over its row, then the bars and the shots. */
const NAME = 24;
const FOOT = 66;
const EDGE = 24;
/** Boards beyond what is drawn, on either side. */
const MARGIN = 1.5;

interface TrialPictureProps {
  readonly finishes: readonly TrialOfFinish[];
  readonly shots: readonly ShotInJob[];
  readonly isLeftHanded: boolean;
}

/** A row for each finish on one scale of boards: where the worlds had it before and have it now, every shot, and their mean. */
export function TrialPicture({ finishes, shots, isLeftHanded }: TrialPictureProps) {
  const ends = finishes.flatMap(({ before, after, boardAtPins }) =>
    [before, after].flatMap((one) => (one === null ? [] : [one.low, one.high])).concat(boardAtPins),
  );
  const seen = shots.map(({ boardAtPins }) => boardAtPins);
  const from = Math.max(-2, Math.floor(Math.min(...ends, ...seen) - MARGIN));
  const to = Math.min(42, Math.ceil(Math.max(...ends, ...seen) + MARGIN));
  // As one looks down the lane: boards count from the bowler's hand.
  const at = (board: number) => {
    const share = (Math.min(to, Math.max(from, board)) - from) / (to - from);
    return EDGE + (isLeftHanded ? share : 1 - share) * (WIDE - 2 * EDGE);
  };
  const step = to - from > 24 ? 5 : to - from > 10 ? 2 : 1;
  const ticks = Array.from({ length: to - from + 1 }, (_, i) => from + i).filter((board) => board % step === 0);
  const high = ROW * finishes.length + FOOT;
  return (
    <>
      <svg className="trial-picture" viewBox={`0 0 ${WIDE} ${high}`} role="img" aria-label={finishes.map(nameOf).join("; ")}>
        {ticks.map((board) => (
          <g key={board}>
            <line x1={at(board)} x2={at(board)} y1={4} y2={high - FOOT + 4} className="interval-scale" />
            <text x={at(board)} y={high - FOOT + 28} className="trial-tick">
              {board}
            </text>
          </g>
        ))}
        <text x={WIDE / 2} y={high - 8} className="trial-tick">
          {TRIAL_ROOM.axis}
        </text>
        {finishes.map((one, i) => (
          <FinishRow
            key={finishText(one.finish)}
            one={one}
            y={ROW * i}
            at={at}
            seen={shots.filter(({ finish }) => finish === finishText(one.finish))}
          />
        ))}
      </svg>
      <ul className="trial-key">
        <li className="before">{TRIAL_ROOM.key.before}</li>
        <li className="after">{TRIAL_ROOM.key.after}</li>
        <li className="seen">{TRIAL_ROOM.key.seen}</li>
      </ul>
    </>
  );
}

interface FinishRowProps {
  readonly one: TrialOfFinish;
  readonly y: number;
  readonly seen: readonly ShotInJob[];
  at(board: number): number;
}

function FinishRow({ one, y, seen, at }: FinishRowProps) {
  const middle = y + NAME + (ROW - NAME) / 2;
  const bar = (interval: Interval | null, className: string, up: number) =>
    interval !== null && <line x1={at(interval.low)} x2={at(interval.high)} y1={middle + up} y2={middle + up} className={className} />;
  return (
    <g>
      <text x={EDGE} y={y + NAME - 2}>
        {finishText(one.finish)}
      </text>
      {bar(one.before, "trial-before", -14)}
      {bar(one.after, "trial-after", 14)}
      {seen.map(({ boardAtPins }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: shots are told apart by their place only
        <circle key={i} cx={at(boardAtPins)} cy={middle} r={5} className="trial-shot" />
      ))}
      <line x1={at(one.boardAtPins)} x2={at(one.boardAtPins)} y1={middle - 22} y2={middle + 22} className="trial-mean" />
    </g>
  );
}

function nameOf({ finish, boardAtPins, before, after }: TrialOfFinish): string {
  const range = (interval: Interval | null) => (interval === null ? "–" : `${fixed(interval.low, 1)}–${fixed(interval.high, 1)}`);
  return TRIAL_ROOM.pictureName(finishText(finish), fixed(boardAtPins, 1), range(before), range(after));
}
