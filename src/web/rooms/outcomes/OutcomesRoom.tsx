import { useEffect } from "react";
import { csvText } from "#contract/csv";
import type { HeldShare, OutcomeReport } from "#engine/learning/outcomes";
import { SYMPTOMS } from "#words/en/rooms/intake";
import { OUTCOME_WORDS } from "#words/en/rooms/outcomes";
import { TABLE } from "#words/en/rooms/pieces";
import { COVER_WORDS } from "#words/en/screens";
import { fixed } from "#words/figures";
import { saveText } from "../../client/saveFile.ts";
import { IntervalBar } from "../../pieces/IntervalBar.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";

const inHundred = (share: number): string => fixed(100 * share, 0);

/** Which of the shop's work held, as bowlers told, and whether the odds that were told are kept. */
export function OutcomesRoom() {
  const report = useRead(["tickets", "outcomes"], () => answered(shop.outcomes.$get()));
  useEffect(() => {
    document.title = OUTCOME_WORDS.title;
  }, []);
  return (
    <main id="answer" className="room held" tabIndex={-1}>
      <h1>{OUTCOME_WORDS.title}</h1>
      <Reading of={report} isEmpty={({ all }) => all.of === 0} empty={OUTCOME_WORDS.nothing}>
        {(read) => <Whole report={read} />}
      </Reading>
    </main>
  );
}

interface Named {
  readonly name: string;
  readonly held: HeldShare;
}

function Whole({ report }: { readonly report: OutcomeReport }) {
  const { all, byCover, bySymptom, calibration, brier } = report;
  const covers = byCover.map(({ cover, held }): Named => ({ name: COVER_WORDS[cover], held }));
  const symptoms = bySymptom.map(({ symptom, held }): Named => ({ name: symptomWords(symptom), held }));
  return (
    <>
      <section className="plate">
        <div className="ball-work-head">
          <h2>{OUTCOME_WORDS.all}</h2>
          <button type="button" className="button" onClick={() => save([{ name: OUTCOME_WORDS.all, held: all }, ...covers, ...symptoms])}>
            {TABLE.csv}
          </button>
        </div>
        <p className="large-figure">{OUTCOME_WORDS.share(inHundred(all.share), inHundred(all.low), inHundred(all.high), all.of)}</p>
        <p className="note">{OUTCOME_WORDS.halves}</p>
      </section>
      <div className="room-columns even-columns">
        <section className="plate">
          <h2>{OUTCOME_WORDS.byCover}</h2>
          <PlainTable name={OUTCOME_WORDS.byCover} rows={covers} keyOf={({ name }) => name} columns={columnsOf(OUTCOME_WORDS.cover)} />
        </section>
        {symptoms.length > 0 && (
          <section className="plate">
            <h2>{OUTCOME_WORDS.bySymptom}</h2>
            <PlainTable
              name={OUTCOME_WORDS.bySymptom}
              rows={symptoms}
              keyOf={({ name }) => name}
              columns={columnsOf(OUTCOME_WORDS.symptom)}
            />
          </section>
        )}
      </div>
      <section className="plate">
        <h2>{OUTCOME_WORDS.calibration}</h2>
        {calibration.length === 0 ? (
          <p className="nothing">{OUTCOME_WORDS.noOdds}</p>
        ) : (
          <>
            <p className="note">{OUTCOME_WORDS.calibrationWhy}</p>
            <PlainTable name={OUTCOME_WORDS.calibration} rows={calibration} keyOf={({ from }) => from} columns={CALIBRATION} />
            {brier !== null && <p className="note">{OUTCOME_WORDS.brier(fixed(brier, 3))}</p>}
          </>
        )}
      </section>
    </>
  );
}

function symptomWords(id: string): string {
  return id in SYMPTOMS ? SYMPTOMS[id as keyof typeof SYMPTOMS] : id;
}

function columnsOf(name: string): readonly Column<Named>[] {
  return [
    { name, cell: (row) => row.name },
    { name: OUTCOME_WORDS.held, cell: ({ held }) => `${inHundred(held.share)} %`, kind: "figure" },
    { name: OUTCOME_WORDS.of, cell: ({ held }) => String(held.of), kind: "figure" },
    { name: OUTCOME_WORDS.interval, cell: ({ held }) => <Bar held={held} />, kind: "figure" },
  ];
}

type Bin = OutcomeReport["calibration"][number];

const CALIBRATION: readonly Column<Bin>[] = [
  { name: OUTCOME_WORDS.said, cell: ({ from, to }) => OUTCOME_WORDS.between(inHundred(from), inHundred(to)) },
  { name: OUTCOME_WORDS.of, cell: ({ held }) => String(held.of), kind: "figure" },
  { name: OUTCOME_WORDS.seen, cell: ({ held }) => `${inHundred(held.share)} %`, kind: "figure" },
  { name: OUTCOME_WORDS.interval, cell: ({ held, said }) => <Bar held={held} said={said} />, kind: "figure" },
  { name: OUTCOME_WORDS.agrees, cell: keptWords },
];

function keptWords({ agrees, said, held }: Bin): string {
  if (agrees) return OUTCOME_WORDS.agreesWords.yes;
  return said > held.share ? OUTCOME_WORDS.agreesWords.bold : OUTCOME_WORDS.agreesWords.shy;
}

/** What held, with its interval; beside it what was said. */
function Bar({ held: { low, share, high }, said }: { readonly held: HeldShare; readonly said?: number }) {
  const name = `${inHundred(low)}–${inHundred(high)}${said === undefined ? "" : `, ${OUTCOME_WORDS.said} ${inHundred(said)}`}`;
  return <IntervalBar low={low} value={share} high={high} said={said} name={name} />;
}

function save(rows: readonly Named[]): void {
  const table = rows.map(({ name, held }) => [name, held.held, held.of, held.share, held.low, held.high]);
  saveText(csvText(OUTCOME_WORDS.csv, table), "held.csv", "text/csv");
}
