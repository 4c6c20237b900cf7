import { type CSSProperties, type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef, useState } from "react";
import { SIDE_AXES, SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import type { Vector } from "#engine/vector";
import { SIDE_LABELS } from "#words/en/padWork";
import { BALL_IN_SPACE } from "#words/en/rooms/ballInSpace";
import { BallScene, type OnBall, type Placed } from "./ballScene.ts";

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

/** The ball to be turned: by a finger, by buttons, by arrow keys. */
export function BallInSpace({ onBall, readings }: SpaceProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useScene(canvas, onBall);
  const from = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const turn = (way: Turn) => scene?.turn(...TURNS[way]);
  const byKey = (event: KeyboardEvent) => {
    const way = KEYS[event.key];
    if (way === undefined) return;
    event.preventDefault();
    turn(way);
  };
  const drag = ({ clientX: x, clientY: y, currentTarget }: PointerEvent<HTMLCanvasElement>) => {
    if (from.current === null) return;
    const perPixel = ACROSS / currentTarget.clientWidth;
    scene?.turn((x - from.current.x) * perPixel, (y - from.current.y) * perPixel);
    from.current = { x, y };
  };
  return (
    <>
      <div className="ball-space">
        <canvas
          ref={canvas}
          role="img"
          aria-label={BALL_IN_SPACE.picture}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            from.current = { x: event.clientX, y: event.clientY };
          }}
          onPointerMove={drag}
          onPointerUp={() => {
            from.current = null;
          }}
          onPointerCancel={() => {
            from.current = null;
          }}
        />
        <Words scene={scene} onBall={onBall} readings={readings} />
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
            onClick={() => scene?.face(SIDE_AXES[side])}
          >
            {SIDE_LABELS[side]}
          </button>
        ))}
      </div>
    </>
  );
}

/** The scene over a canvas, built anew when what is drawn or the page's look changes. Whoever asks is drawn again with every picture. */
function useScene(canvas: RefObject<HTMLCanvasElement | null>, onBall: OnBall): BallScene | null {
  const [now, setNow] = useState<BallScene | null>(null);
  const [, setPicture] = useState(0);
  const [look, setLook] = useState(() => document.documentElement.dataset.variant);
  useEffect(() => {
    const watch = new MutationObserver(() => setLook(document.documentElement.dataset.variant));
    watch.observe(document.documentElement, { attributes: true, attributeFilter: ["data-variant"] });
    return () => watch.disconnect();
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the scene takes its colours from the page, so that another look is another scene
  useEffect(() => {
    const place = canvas.current;
    if (place === null) return;
    const scene = new BallScene(place, onBall, () => setPicture((count) => count + 1));
    setNow(scene);
    const fit = new ResizeObserver(() => scene.resize(place.clientWidth));
    fit.observe(place);
    return () => {
      fit.disconnect();
      scene.dispose();
      setNow(null);
    };
  }, [canvas, onBall, look]);
  return now;
}

interface WordsProps extends SpaceProps {
  readonly scene: BallScene | null;
}

/** Words beside the places that face the viewer; they say nothing that the table below does not. */
function Words({ scene, onBall, readings }: WordsProps) {
  if (scene === null) return null;
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
        const placed = scene.placeOf(place);
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
