import type { ReferenceBall } from "#contract/records/stock";
import { isSide, OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import { MEASURE, PLACE_LABELS } from "#words/en/rooms/measure";
import { READ_ORDER, type RoughnessUnit } from "../../measured/entries.ts";
import type { Read } from "../../measured/readings.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { useRoughnessUnit } from "../../shop/zone.ts";
import { SheenKeys } from "./SheenKeys.tsx";
import { TesterPad } from "./TesterPad.tsx";
import type { Measuring, MeasuringOf } from "./useMeasuring.ts";

interface HereProps {
  readonly of: MeasuringOf;
  readonly measuring: Measuring;
  readonly unit: RoughnessUnit;
  said(read: Read | null): string | null;
  onFile(): void;
}

/** The place that is being read: how the ball lies for it, its readings, and the other places that may be read. */
export function ReadHere({ of, measuring, unit, said, onFile }: HereProps) {
  const { at, here, readAt } = measuring;
  const { figure } = useRoughnessUnit();
  const read = readAt(at);
  const place = isSide(at) ? READ_ORDER.indexOf(at) : -1;
  return (
    <section className="plate read-here">
      <h2>
        <span>{PLACE_LABELS[at]}</span>{" "}
        <small>
          {MEASURE.lies[at]}
          {place !== -1 && ` · ${MEASURE.sideOf(place + 1, READ_ORDER.length)}`}
        </small>
      </h2>
      {read !== null && (
        <p className="read-already">
          {MEASURE.already(read.um.length > 0 ? read.um.map(figure).join("  ") : (said(read) ?? "–"))}{" "}
          {here.length > 0 && (
            <button type="button" className="button quiet" onClick={() => measuring.takeBack(here)}>
              {MEASURE.takeBack}
            </button>
          )}
        </p>
      )}
      {measuring.how === "tester" ? (
        <TesterPad
          key={`${at} ${measuring.when}`}
          label={MEASURE.readingOf(PLACE_LABELS[at], unit)}
          typed={measuring.typed}
          unit={unit}
          next={isSide(at) ? MEASURE.next : MEASURE.saveIt}
          figure={figure}
          onType={(typed) => measuring.set({ typed, place: at })}
          onNext={measuring.saveTester}
        />
      ) : (
        <>
          <Against references={of.references} measuring={measuring} />
          <SheenKeys
            label={PLACE_LABELS[at]}
            seen={read?.comparison ?? null}
            onSee={measuring.saveSheen}
            onNext={() => measuring.saveTester([])}
          />
          <p className="note">{MEASURE.eye}</p>
        </>
      )}
      <p className="read-also">
        {MEASURE.also}{" "}
        {([TRACK, OFF_TRACK] as const)
          .filter((one) => one !== at)
          .map((one: Place) => (
            <button key={one} type="button" className="link" onClick={() => measuring.set({ place: one, typed: "" })}>
              {MEASURE.alsoPlaces[one as keyof typeof MEASURE.alsoPlaces]}
            </button>
          ))}
        <button type="button" className="link" onClick={onFile}>
          {MEASURE.openFile}
        </button>
      </p>
    </section>
  );
}

const NOT_RECORDED = "";

/** Which reference ball lies beside it. */
function Against({ references, measuring }: { readonly references: readonly ReferenceBall[]; readonly measuring: Measuring }) {
  const words = { ...Object.fromEntries(references.map(({ id, name }) => [id, name])), [NOT_RECORDED]: MEASURE.unrecordedReference };
  return (
    <>
      <WordField
        label={MEASURE.reference}
        value={measuring.reference?.id ?? NOT_RECORDED}
        words={words}
        onChange={measuring.setReference}
      />
      <p className="note">{MEASURE.sheenHelp}</p>
    </>
  );
}
