import type { Usefulness } from "#engine/learning/usefulness";

/** How useful one more look is. */
export const USEFULNESS: Readonly<Record<Usefulness, string>> = {
  very: "very useful",
  somewhat: "somewhat useful",
  little: "of little use",
};
