import { z } from "zod";

/** What a card may be printed on. */
export const CARD_SIZES = ["A6", "half letter", "A4", "Letter"] as const;

const MM_PER_IN = 25.4;
const LEAST_MM = 20;
const MOST_MM = 300;
const LABEL_ALLOWED = `width × height of a label, each ${LEAST_MM} to ${MOST_MM} mm: 62 × 90 mm, or 2.25 × 1.25 in`;
const LABEL = /^(\d{1,3}(?:[.,]\d{1,3})?) ?[×xX*] ?(\d{1,3}(?:[.,]\d{1,3})?) ?(mm|in)$/;

export interface LabelSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A label's size as it is written; null where it is none. */
export function labelSizeOf(written: string): LabelSize | null {
  const found = LABEL.exec(written.trim());
  if (found === null) return null;
  const [, width, height, unit] = found;
  const mm = (figure: string) => Number(figure.replace(",", ".")) * (unit === "in" ? MM_PER_IN : 1);
  const size = { widthMm: mm(width), heightMm: mm(height) };
  return Object.values(size).every((one) => one >= LEAST_MM && one <= MOST_MM) ? size : null;
}

export const labelSize = z
  .string({ error: LABEL_ALLOWED })
  .trim()
  .max(40, { error: LABEL_ALLOWED })
  .refine((written) => labelSizeOf(written) !== null, { error: LABEL_ALLOWED });
