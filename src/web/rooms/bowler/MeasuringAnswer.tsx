import { useState } from "react";
import { DELIVERY_NUMBERS } from "#contract/deliveryFile";
import type { Bowler } from "#contract/records/bowler";
import type { BowlerMeasured } from "#engine/learning/delivery/measureBowler";
import type { OverShots } from "#engine/learning/delivery/shots";
import { DELIVERY, DELIVERY_WORDS, SPEED_CLASS_MEANS, SPEED_CLASS_WORDS } from "#words/en/delivery";
import { MEASURING } from "#words/en/rooms/measuring";
import type { DeliveryMeasured } from "../../client/protocol.ts";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { For } from "../../shop/useSession.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes, useSpeed } from "../../shop/zone.ts";
import { BOWLER_TOUCHES, changeBowler } from "./changeBowler.ts";
import { type Keeping, keepingOf, measuredChange } from "./keepMeasured.ts";

interface AnswerProps {
  readonly bowler: Bowler;
  readonly told: DeliveryMeasured | undefined;
  readonly isAsked: boolean;
  /** How many shots something was typed of. */
  readonly shots: number;
  readonly wasKept: boolean;
  onKept(): void;
}

/** What the shots say, with what the reading allows, and one press to keep it. */
export function MeasuringAnswer({ bowler, told, isAsked, shots, wasKept, onKept }: AnswerProps) {
  // While a field is being typed the last figures stay in view, marked as such.
  const [last, setLast] = useState<BowlerMeasured | null>(null);
  if (told?.kind === "measured" && told.measured !== last) setLast(told.measured);
  const measured = told?.kind === "measured" ? told.measured : last;
  return (
    <section aria-live="polite">
      <h4>{MEASURING.answer}</h4>
      {wasKept && <p role="status">{MEASURING.kept}</p>}
      {!isAsked && !wasKept && <p className="nothing">{MEASURING.nothingYet}</p>}
      {isAsked && measured === null && told === undefined && <p className="reading">{MEASURING.reading}</p>}
      {isAsked && measured !== null && (
        <>
          {told?.kind === "problems" && <p className="note">{MEASURING.asBefore}</p>}
          <Figures measured={measured} />
          <Meaning measured={measured} />
          {told?.kind === "measured" && <Keep bowler={bowler} measured={measured} shots={shots} onKept={onKept} />}
        </>
      )}
    </section>
  );
}

interface FigureRow {
  readonly name: string;
  readonly number: OverShots;
  readonly isTaken: boolean;
  figure(value: number): string;
}

function Figures({ measured }: { readonly measured: BowlerMeasured }) {
  const speed = useSpeed();
  const { pap } = measured;
  const rows: readonly FigureRow[] = [
    ...DELIVERY_NUMBERS.map((key) => ({
      name: DELIVERY_WORDS[key].name,
      number: measured[key],
      isTaken: measured[key].from === "taken",
      figure: key === "speedMph" ? speed.text : DELIVERY_WORDS[key].figure,
    })),
    ...(pap === null
      ? []
      : [
          { name: MEASURING.papOver, number: pap.overIn, isTaken: false, figure: MEASURING.overFigure },
          { name: MEASURING.papUp, number: pap.upIn, isTaken: false, figure: DELIVERY.upOrDown },
        ]),
  ];
  return (
    <>
      <PlainTable
        name={MEASURING.answer}
        rows={rows}
        keyOf={({ name }) => name}
        columns={[
          { name: MEASURING.what, cell: ({ name }) => name },
          {
            name: MEASURING.measured,
            kind: "figure",
            cell: ({ number: { mean }, isTaken, figure }) => {
              if (isTaken) return <small>{MEASURING.notMeasured(figure(mean.value))}</small>;
              return <strong>{figure(mean.value)}</strong>;
            },
          },
          {
            name: MEASURING.between,
            kind: "figure",
            cell: ({ number: { mean }, isTaken, figure }) => (isTaken ? "" : MEASURING.range(figure(mean.low), figure(mean.high))),
          },
          { name: MEASURING.varies, kind: "figure", cell: variesText },
        ]}
      />
      <p className="note">{MEASURING.ends}</p>
    </>
  );
}

function variesText({ number: { spread, shots }, isTaken, figure }: FigureRow): string {
  if (isTaken) return "";
  if (spread === null) return MEASURING.oneShot;
  return MEASURING.overShots(spread === 0 ? MEASURING.lessThanRead : figure(spread), shots);
}

function Meaning({ measured: { spinRatio, speedClass, classesPossible } }: { readonly measured: BowlerMeasured }) {
  const others = classesPossible.filter((one) => one !== speedClass).map((one) => SPEED_CLASS_WORDS[one]);
  return (
    <>
      <p>
        {DELIVERY.spin(spinRatio.value, spinRatio.low, spinRatio.high)}: <strong>{SPEED_CLASS_WORDS[speedClass]}</strong>.{" "}
        {others.length > 0 && DELIVERY.couldBe(others)}
      </p>
      <p>
        {MEASURING.meansForSurface}: {SPEED_CLASS_MEANS[speedClass]}
      </p>
    </>
  );
}

interface KeepProps {
  readonly bowler: Bowler;
  readonly measured: BowlerMeasured;
  readonly shots: number;
  onKept(): void;
}

function Keep({ bowler, measured, shots, onKept }: KeepProps) {
  const times = useShopTimes();
  const keeping = keepingOf(measured, bowler);
  const note = [
    MEASURING.noteShots(shots),
    ...(keeping.before === null || keeping.carried.length === 0
      ? []
      : [MEASURING.noteCarried(namesOf(keeping.carried), times.day(keeping.before.at))]),
  ].join(" ");
  const write = useWrite(
    () => changeBowler(bowler.id, bowler, measuredChange(measured, bowler, new Date().toISOString(), note)),
    BOWLER_TOUCHES,
  );
  return (
    <>
      <p className="note">{whatIsKept(keeping, measured.pap !== null)}</p>
      <WriteFault error={write.error} />
      <For least="counter">
        <button
          type="button"
          className="button primary"
          disabled={write.isPending || keeping.measured.length === 0}
          onClick={() => write.mutate(undefined, { onSuccess: onKept })}
        >
          {MEASURING.keep}
        </button>
      </For>
    </>
  );
}

function namesOf(keys: Keeping["measured"]): string {
  return keys.map((key) => DELIVERY_WORDS[key].name.toLowerCase()).join(", ");
}

function whatIsKept({ measured, carried, empty, spread }: Keeping, hasPap: boolean): string {
  const { keepWhat } = MEASURING;
  const parts = [
    [measured, keepWhat.numbers],
    [carried, keepWhat.carried],
    [empty, keepWhat.empty],
    [spread, keepWhat.spread],
  ] as const;
  return [...parts.flatMap(([keys, say]) => (keys.length === 0 ? [] : [say(namesOf(keys))])), ...(hasPap ? [keepWhat.pap] : [])].join(" ");
}
