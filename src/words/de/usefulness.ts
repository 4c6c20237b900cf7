import type * as en from "../en/usefulness.ts";
import type { Translated } from "../translated.ts";

export const USEFULNESS: Translated<typeof en.USEFULNESS> = { very: "sehr nützlich", somewhat: "etwas nützlich", little: "wenig nützlich" };
