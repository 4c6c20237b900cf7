import type { Step } from "./step.ts";
import { step001 } from "./step001.ts";
import { step002 } from "./step002.ts";
import { step003 } from "./step003.ts";
import { step004 } from "./step004.ts";
import { step005 } from "./step005.ts";
import { step006 } from "./step006.ts";

/** In the order they are applied. */
export const STEPS: readonly Step[] = [step001, step002, step003, step004, step005, step006];
