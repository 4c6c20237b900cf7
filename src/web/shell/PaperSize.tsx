import { useSettings } from "../shop/zone.ts";

/** Letter is 17.6 mm lower than A4: what fills a page of the one has to be drawn a little smaller on the other. */
const LETTER = "@page { size: Letter portrait } @media print { .plan-room { zoom: 0.88 } }";

/** Pages that are printed from any room lie on the paper that is in the shop's printer; the style sheet's own size is A4. */
export function PaperSize() {
  return useSettings().data?.paperSize === "Letter" ? <style>{LETTER}</style> : null;
}
