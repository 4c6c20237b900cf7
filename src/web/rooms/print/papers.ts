import { type LabelSize, labelSizeOf } from "#contract/records/paper";
import type { Settings } from "#contract/records/settings";

type Papers = Pick<Settings, "paperSize" | "ticketSize" | "cardSize" | "labelSize">;

/** As CSS writes a page's size and margins (CSS Paged Media, `@page`). */
export interface PageOf {
  readonly size: string;
  readonly margin: string;
}

/** A page as it stands in a style sheet. */
export function pageText({ size, margin }: PageOf): string {
  return `size: ${size}; margin: ${margin}`;
}

const CARD_PAGES: Readonly<Record<Settings["cardSize"], PageOf>> = {
  A6: { size: "105mm 148mm", margin: "5mm" },
  "half letter": { size: "5.5in 8.5in", margin: "8mm" },
  A4: { size: "A4", margin: "20mm" },
  Letter: { size: "Letter", margin: "20mm" },
};

export function sheetPage({ paperSize }: Papers): PageOf {
  return { size: paperSize, margin: "14mm" };
}

/** A ticket lies on whole sheets with their usual margin, on smaller paper with as little as a card. */
export function ticketPage(papers: Papers): PageOf {
  const size = papers.ticketSize ?? papers.paperSize;
  return size === "A4" || size === "Letter" ? sheetPage({ ...papers, paperSize: size }) : CARD_PAGES[size];
}

export function cardPage({ cardSize }: Papers): PageOf {
  return CARD_PAGES[cardSize];
}

/** The class of a sheet by the paper that it lies on. */
export function onPaper(what: string, { ticketSize, paperSize, cardSize }: Papers): string {
  return `on-${(what === "ticket" ? (ticketSize ?? paperSize) : cardSize).replace(" ", "-")}`;
}

/** What a label printer cannot reach, mm. */
export const LABEL_MARGIN_MM = 2;
const USUAL_LABEL: LabelSize = { widthMm: 62, heightMm: 90 };

export function labelOf({ labelSize }: Papers): LabelSize {
  return labelSizeOf(labelSize) ?? USUAL_LABEL;
}

export function labelPage(papers: Papers): PageOf {
  const { widthMm, heightMm } = labelOf(papers);
  return { size: `${widthMm}mm ${heightMm}mm`, margin: `${LABEL_MARGIN_MM}mm` };
}
