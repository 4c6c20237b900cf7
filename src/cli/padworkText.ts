import type { CautionId } from "#engine/rules/cautions";
import { DEPTH_RANGE, type PadWork } from "#engine/surface/padWork/padWork";
import { PAD_WORK, SIDE_NAMES } from "#words/en/padWork";
import { fixed } from "#words/figures";
import { messageText } from "#words/messageText";
import { paragraph, textTable } from "./textTable.ts";

const WIDTH = 100;
/** Of the roundness allowed, from which work is called a risk. */
const RISK = 0.5;

/** The pad work as text: how even, where thin, what each side does in it, and what it does to the roundness. */
export function padworkText(name: string | null, work: PadWork, usual: readonly string[], cautions: readonly CautionId[]): string {
  const { evenness, thin, compared, flat } = work;
  const sections = [
    [
      `${name === null ? "" : `${name}: `}${PAD_WORK.title}`,
      ...(evenness.most === 0 ? [PAD_WORK.noWork] : paragraph(PAD_WORK.evenness(evenness), "", WIDTH)),
      PAD_WORK.crossing(evenness),
    ],
    thin.length === 0 ? [PAD_WORK.noThin] : [`${PAD_WORK.thin}:`, ...thin.map((spot) => `  · ${PAD_WORK.spot(spot)}`)],
    sideTable(work),
    [`${PAD_WORK.compared}`, ...compared.map((one) => `  · ${PAD_WORK.onSides(one.sides, one.evenness)}`)],
    [
      PAD_WORK.depth(flat),
      ...paragraph(PAD_WORK.outOfRound(flat), "", WIDTH),
      ...(flat.ofAllowed > 1 ? paragraph(PAD_WORK.flatOver, "  ! ", WIDTH) : []),
      ...(flat.ofAllowed > RISK && flat.ofAllowed <= 1 ? paragraph(PAD_WORK.flatRisk, "  ! ", WIDTH) : []),
    ],
    cautions.flatMap((id) => paragraph(messageText({ id: `caution.${id}`, params: {} }), "  ! ", WIDTH)),
    [
      ...(usual.length > 0 ? paragraph(PAD_WORK.usual(usual.join(", ")), "", WIDTH) : []),
      ...paragraph(PAD_WORK.estimate(DEPTH_RANGE.low, DEPTH_RANGE.high), "", WIDTH),
    ],
  ];
  return `${sections.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function sideTable({ sides }: PadWork): string[] {
  const { columns } = PAD_WORK;
  const column = (heading: readonly [string, string], align: "left" | "right", cell: (side: (typeof sides)[number]) => string) => ({
    heading,
    align,
    cells: sides.map(cell),
  });
  return textTable([
    column([columns.side, ""], "left", ({ side }) => SIDE_NAMES[side]),
    column([columns.seconds, ""], "right", ({ seconds }) => fixed(seconds, 0)),
    column([columns.share, ""], "right", ({ share }) => `${fixed(100 * share, 0)} %`),
    column([columns.without, columns.varies], "right", ({ without }) => `${fixed(100 * without.cv, 0)} %`),
    column(["", columns.least], "right", ({ without }) => fixed(without.least, 2)),
    column(["", columns.crossing], "right", ({ without }) => fixed(without.crossing, 2)),
  ]);
}
