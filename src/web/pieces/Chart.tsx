import { useState } from "react";
import { inFileColours } from "#drawing/paint";
import { CHART_FILES } from "#words/en/rooms/pieces";
import type { TwoLayouts } from "../client/protocol.ts";
import { saveBlob, saveText, svgToPng } from "../client/saveFile.ts";
import { Picture, PictureForWidth } from "./Picture.tsx";

interface ChartProps {
  readonly svg: TwoLayouts | string;
  readonly className: string;
  /** Of the files, without an ending. */
  readonly file: string;
}

/** Points of a PNG to a unit of the picture: sharp on paper too. */
const PNG_SCALE = 2;

/** A chart, and the same as files that stand by themselves. */
export function Chart({ svg, className, file }: ChartProps) {
  const [failure, setFailure] = useState<string | null>(null);
  const whole = (): string => inFileColours(typeof svg === "string" ? svg : svg.lying);
  const savePng = (): void => {
    svgToPng(whole(), PNG_SCALE)
      .then((png) => saveBlob(png, `${file}.png`))
      .then(() => setFailure(null))
      .catch((error: unknown) => setFailure(error instanceof Error ? error.message : String(error)));
  };
  return (
    <figure className="chart">
      {typeof svg === "string" ? <Picture svg={svg} className={className} /> : <PictureForWidth svg={svg} className={className} />}
      <div className="as-files no-print">
        <button type="button" onClick={() => saveText(whole(), `${file}.svg`, "image/svg+xml")}>
          {CHART_FILES.svg}
        </button>
        <button type="button" onClick={savePng}>
          {CHART_FILES.png}
        </button>
      </div>
      {failure !== null && <p className="field-problem">{failure}</p>}
    </figure>
  );
}
