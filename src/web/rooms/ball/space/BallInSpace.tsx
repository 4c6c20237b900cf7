import { type CSSProperties, type KeyboardEvent, type PointerEvent, useRef, useState } from "react";
import { type OnBall, type Placed, placedOn, turnedGlobe } from "#drawing/turnedGlobe";
import { SIDE_AXES, SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import { aboutAxis, multiply, type Quaternion, rotate, turnBetween, unit, type Vector } from "#engine/vector";
import { SIDE_LABELS } from "#words/en/padWork";
import { BALL_IN_SPACE } from "#words/en/rooms/ballInSpace";
import { Picture } from "../../../pieces/Picture.tsx";

interface SpaceProps {
  readonly onBall: OnBall;
  /** What was read last on each side, as text. */
  readonly readings: Readonly<Partial<Record<SideId, string>>>;
}

/** A twelfth of a turn by button or key. */
const STEP = Math.PI / 6;
/** Turned this far by a finger that crosses the whole picture, rad. */
const ACROSS = Math.PI * 1.2;

/** Words of points stand higher than those of sides: a PAP often lies close to the middle of a side. */
type Mark = "side" | "point";

/** Share of the picture's width beyond which a word would run out of it. */
const MOST_RIGHT = 0.6;

type Turn = keyof typeof BALL_IN_SPACE.turns;
const TURNS: Readonly<Record<Turn, readonly [right: number, down: number]>> = {
  left: [-STEP, 0],
  right: [STEP, 0],
  up: [0, -STEP],
  down: [0, STEP],
};
const KEYS: Readonly<Record<string, Turn>> = { ArrowLeft: "left", ArrowRight: "right", ArrowUp: "up", ArrowDown: "down" };

/** As it lies at first: seen a little from above and from the right, so that it is seen to be round. */
const AT_FIRST = turned([1, 0, 0, 0], -0.45, 0.3);

/** Turned about the viewer's own axes, rad: positive to the right and downwards. */
function turned(from: Quaternion, right: number, down: number): Quaternion {
  return multiply(aboutAxis([1, 0, 0], down), multiply(aboutAxis([0, 1, 0], right), from));
}

/** Turned so that a place of the ball is in front. */
function faced(from: Quaternion, place: Vector): Quaternion {
  return multiply(turnBetween(unit(rotate(from, place)), [0, 0, 1]), from);
}

/** The ball to be turned: by a finger, by buttons, by arrow keys. */
export function BallInSpace({ onBall, readings }: SpaceProps) {
  const [lies, setLies] = useState(AT_FIRST);
  const from = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const turn = (way: Turn) => setLies((now) => turned(now, ...TURNS[way]));
  const byKey = (event: KeyboardEvent) => {
    const way = KEYS[event.key];
    if (way === undefined) return;
    event.preventDefault();
    turn(way);
  };
  const drag = ({ clientX: x, clientY: y, currentTarget }: PointerEvent<HTMLElement>) => {
    const last = from.current;
    if (last === null) return;
    const perPixel = ACROSS / currentTarget.clientWidth;
    setLies((now) => turned(now, (x - last.x) * perPixel, (y - last.y) * perPixel));
    from.current = { x, y };
  };
  const letGo = () => {
    from.current = null;
  };
  return (
    <>
      <div
        className="ball-space"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          from.current = { x: event.clientX, y: event.clientY };
        }}
        onPointerMove={drag}
        onPointerUp={letGo}
        onPointerCancel={letGo}
      >
        <Picture svg={turnedGlobe(onBall, lies)} className="ball-turned" />
        <Words lies={lies} onBall={onBall} readings={readings} />
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would be announced as part of a form */}
      <div className="choices-words no-print" role="group" aria-label={BALL_IN_SPACE.turnBy} onKeyDown={byKey}>
        {(Object.keys(TURNS) as Turn[]).map((way) => (
          <button key={way} type="button" className="button" onClick={() => turn(way)}>
            {BALL_IN_SPACE.turns[way]}
          </button>
        ))}
        {SIDE_IDS.map((side) => (
          <button
            key={side}
            type="button"
            className="button"
            aria-label={BALL_IN_SPACE.faceOf(side)}
            onClick={() => setLies((now) => faced(now, SIDE_AXES[side]))}
          >
            {SIDE_LABELS[side]}
          </button>
        ))}
      </div>
    </>
  );
}

interface WordsProps extends SpaceProps {
  readonly lies: Quaternion;
}

/** Words beside the places that face the viewer; they say nothing that the table below does not. */
function Words({ lies, onBall, readings }: WordsProps) {
  const { pap, pin, massBias } = onBall.places;
  const words: readonly (readonly [string, Vector | null, Mark])[] = [
    ...SIDE_IDS.map((side) => [sideWord(side, readings), SIDE_AXES[side], "side"] as const),
    [BALL_IN_SPACE.pap, pap, "point"],
    [BALL_IN_SPACE.pin, pin, "point"],
    [BALL_IN_SPACE.massBias, massBias, "point"],
  ];
  return (
    <div aria-hidden="true">
      {words.flatMap(([text, place, mark]) => {
        if (place === null) return [];
        const placed = placedOn(lies, place);
        return placed.isSeen ? [<Word key={text} text={text} mark={mark} placed={placed} />] : [];
      })}
    </div>
  );
}

function sideWord(side: SideId, readings: SpaceProps["readings"]): string {
  return [SIDE_LABELS[side], readings[side]].filter((part) => part !== undefined).join(" ");
}

interface WordProps {
  readonly text: string;
  readonly mark: Mark;
  readonly placed: Placed;
}

function Word({ text, mark, placed: { x, y } }: WordProps) {
  const style: CSSProperties = { left: `${100 * x}%`, top: `${100 * y}%` };
  // Beside its place, on the side where there is room for it.
  return (
    <span className={`ball-word ball-${mark} ${x > MOST_RIGHT ? "is-left" : ""}`} style={style}>
      {text}
    </span>
  );
}
