import type { Bowler } from "#contract/records/bowler";
import { TYPICAL_SPREAD } from "#engine/delivery/words";
import { BOWLER } from "#words/en/rooms/bowler";
import type { EditField } from "../../pieces/EditForm.tsx";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { figureOrNull, typedOf } from "../../shop/typedValues.ts";
import { type Typed, useEditing } from "../../shop/useEditing.ts";
import { figureText, type SpeedUnit, useSpeed } from "../../shop/zone.ts";
import { BOWLER_TOUCHES, type BowlerChange, changeBowler, readBowler } from "./changeBowler.ts";

type Spread = NonNullable<Bowler["spread"]>;

const PAP = ["pap.overIn", "pap.upIn"] as const;
const SPREAD = [
  ["speedMph", (unit: string) => BOWLER.spreadSpeed(unit)],
  ["revRateRpm", () => BOWLER.spreadRevs],
  ["axisRotationDeg", () => BOWLER.spreadRotation],
  ["launchAngleDeg", () => BOWLER.spreadLaunch],
  ["laydownBoards", () => BOWLER.spreadLaydown],
] as const satisfies readonly (readonly [keyof Spread, (unit: string) => string])[];

/** How much the bowler varies from shot to shot, and where the axis leaves the ball. */
export function SpreadAndPap({ bowler }: { readonly bowler: Bowler }) {
  const speed = useSpeed();
  const editing = useEditing({
    memory: `gritwright.bowler.spread.${bowler.id}`,
    thing: bowler,
    typedOf: (one) => spreadTyped(one, speed),
    send: (typed, made, changed) => changeBowler(bowler.id, made, spreadChange(bowler, typed, changed, speed)),
    read: readBowler,
    touches: BOWLER_TOUCHES,
  });
  const { spread, pap } = bowler;
  const shown = (key: keyof Spread, value: number) => figureText(key === "speedMph" ? Number(speed.typed(value)) : value);
  const rows = SPREAD.map(([key, label]) => {
    const known = spread?.[key] ?? null;
    return [label(speed.unit), known === null ? `${shown(key, TYPICAL_SPREAD[key])}, ${BOWLER.usual}` : shown(key, known)] as const;
  });
  return (
    <EditPlate
      least="counter"
      title={BOWLER.spread}
      rows={[
        ...rows,
        [BOWLER.papOver, pap === null ? BOWLER.unknown : figureText(pap.overIn)],
        [BOWLER.papUp, pap === null ? BOWLER.unknown : figureText(pap.upIn)],
      ]}
      fields={fieldsIn(speed.unit)}
      editing={editing}
    >
      <p className="note">{BOWLER.spreadWhy}</p>
    </EditPlate>
  );
}

function fieldsIn(unit: string): readonly EditField[] {
  return [
    ...SPREAD.map(([key, label]) => ({ path: `spread.${key}`, label: label(unit), as: "number" as const })),
    { path: PAP[0], label: BOWLER.papOver, as: "number", help: BOWLER.papHelp },
    { path: PAP[1], label: BOWLER.papUp, as: "number", help: BOWLER.papHelp },
  ];
}

function spreadTyped({ spread, pap }: Bowler, speed: SpeedUnit): Typed {
  const figures = SPREAD.map(([key]) => {
    const value = spread?.[key] ?? null;
    return [`spread.${key}`, key === "speedMph" ? speed.typed(value) : typedOf(value)];
  });
  return { ...Object.fromEntries(figures), [PAP[0]]: typedOf(pap?.overIn), [PAP[1]]: typedOf(pap?.upIn) };
}

/** What was not touched stays to the last digit: in the shop's own unit a speed is rounded. */
function spreadChange({ spread, pap }: Bowler, typed: Typed, changed: ReadonlySet<string>, speed: SpeedUnit): BowlerChange {
  const figures = SPREAD.map(([key]) => {
    if (!changed.has(`spread.${key}`)) return [key, spread?.[key] ?? null] as const;
    const figure = figureOrNull(typed[`spread.${key}`]);
    return [key, key === "speedMph" && typeof figure === "number" ? speed.mph(figure) : figure] as const;
  });
  const [overIn, upIn] = PAP.map((path) => figureOrNull(typed[path]));
  return {
    spread: figures.every(([, value]) => value === null) ? null : (Object.fromEntries(figures) as Spread),
    // One of the two alone is no place: the shop refuses it, and says what it wants.
    pap: !PAP.some((path) => changed.has(path))
      ? pap
      : overIn === null && upIn === null
        ? null
        : ({ overIn, upIn } as NonNullable<Bowler["pap"]>),
  };
}
