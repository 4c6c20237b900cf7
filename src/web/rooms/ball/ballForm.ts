import type { Ball } from "#contract/records/ball";
import { figureOrNull, textOrNull, typedOf, wordOrNull } from "../../shop/typedValues.ts";
import type { Typed } from "../../shop/useEditing.ts";
import type { BallChange } from "./changeBall.ts";

const CORE = ["massLb", "diameterIn", "rgIn", "differentialIn", "intermediateDifferentialIn"] as const;
const LAYOUT = ["pinToPapIn", "drillingAngleDeg", "valAngleDeg"] as const;

/** A ball as it stands in its form. */
export function ballTyped(ball: Ball): Typed {
  const { name, serial, cover, job, state, boxFinish, core, layout, heatLimitF, purchasedOn, drilledOn, warranty, notes } = ball;
  return {
    name,
    serial: typedOf(serial),
    cover: typedOf(cover),
    job: typedOf(job),
    state,
    boxFinish: typedOf(boxFinish),
    ...Object.fromEntries(CORE.map((key) => [`core.${key}`, typedOf(core?.[key])])),
    ...Object.fromEntries(LAYOUT.map((key) => [`layout.${key}`, typedOf(layout?.[key])])),
    heatLimitF: typedOf(heatLimitF),
    purchasedOn: typedOf(purchasedOn),
    drilledOn: typedOf(drilledOn),
    "warranty.until": typedOf(warranty?.until),
    "warranty.note": typedOf(warranty?.note),
    notes,
  };
}

/** Only what was touched; core, layout and warranty go as wholes. */
export function ballChange(typed: Typed, changed: ReadonlySet<string>): BallChange {
  const whole = {
    name: typed.name.trim(),
    serial: textOrNull(typed.serial),
    cover: wordOrNull(typed.cover),
    job: wordOrNull(typed.job),
    state: typed.state,
    boxFinish: textOrNull(typed.boxFinish),
    core: figuresOf(typed, "core", CORE),
    layout: figuresOf(typed, "layout", LAYOUT),
    heatLimitF: figureOrNull(typed.heatLimitF),
    purchasedOn: textOrNull(typed.purchasedOn),
    drilledOn: textOrNull(typed.drilledOn),
    warranty: warrantyOf(typed),
    notes: typed.notes,
  };
  const touched = new Set([...changed].map((path) => path.split(".")[0]));
  return Object.fromEntries(Object.entries(whole).filter(([key]) => touched.has(key))) as BallChange;
}

function figuresOf(typed: Typed, group: string, keys: readonly string[]): Readonly<Record<string, number | null>> | null {
  const figures = keys.map((key) => [key, figureOrNull(typed[`${group}.${key}`])] as const);
  return figures.every(([, figure]) => figure === null) ? null : Object.fromEntries(figures);
}

function warrantyOf(typed: Typed): Ball["warranty"] {
  const [until, note] = [textOrNull(typed["warranty.until"]), typed["warranty.note"].trim()];
  return until === null && note === "" ? null : { until, note };
}
