import { useId } from "react";
import { markDisc } from "#drawing/markDisc";
import { MEASURING } from "#words/en/rooms/measuring";
import { Picture } from "../../pieces/Picture.tsx";

/** The tape's end over a quarter of a turn: the example of the delivery file's page. */
const EXAMPLE = [
  { right: -0.55, up: -0.52 },
  { right: -0.36, up: -0.45 },
  { right: -0.2, up: -0.28 },
  { right: -0.09, up: -0.04 },
  { right: -0.06, up: 0.22 },
];

/** How to film a shot, a line for each thing that can be read off it. */
export function MeasuringHow() {
  const id = useId();
  return (
    <details className="add-stop">
      <summary>{MEASURING.how}</summary>
      <div className="measuring-how">
        <ul>
          {MEASURING.hows.map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li className="caution">{MEASURING.howCaution}</li>
        </ul>
        <figure>
          <Picture svg={markDisc(EXAMPLE, [], id)} className="mark-disc" />
          <figcaption className="note">{MEASURING.howDisc}</figcaption>
        </figure>
      </div>
    </details>
  );
}
