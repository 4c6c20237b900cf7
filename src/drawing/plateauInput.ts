import type { Finish } from "#engine/surface/finish";

/** One finish: how many good shots in a hundred it loses against the pick (below 0: gains), with the band of that *difference*. Null without a line. */
export interface PlateauStep {
  readonly finish: Finish;
  readonly lossPer100: { readonly value: number; readonly low: number; readonly high: number } | null;
}

export interface PlateauInput {
  /** From dull to smooth. */
  readonly steps: readonly PlateauStep[];
  /** As `finishText` writes it; null when nothing is picked. */
  readonly pick: string | null;
  readonly plateau: readonly string[];
  readonly cliff: "smoother" | "duller" | null;
}

/** A finish that has a line. */
export type Step = PlateauStep & { readonly lossPer100: NonNullable<PlateauStep["lossPer100"]> };

/** The ground of the picture: where a finish stands and how deep a loss lies. */
export interface Ground {
  readonly x: (finish: string) => number;
  readonly y: (loss: number) => number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly font: number;
}
