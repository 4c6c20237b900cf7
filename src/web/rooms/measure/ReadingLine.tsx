import { useEffect, useRef, useState } from "react";
import { type ReadingLineInput, readingLine } from "#drawing/readingLine";
import { Picture } from "../../pieces/Picture.tsx";

/** Beyond this it would only be empty. */
const WIDEST = 700;

/** Every side's mean on one line, drawn as wide as its place so that its words stay as large as the others. */
export function ReadingLine(input: ReadingLineInput) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidth(Math.min(WIDEST, element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return (
    <div ref={place} className="reading-line">
      {width > 0 && input.points.length > 0 && <Picture svg={readingLine(input, width)} className="reading-line-picture" />}
    </div>
  );
}
