import { useState } from "react";
import { csvText } from "#contract/csv";
import { ASSUMPTIONS, type Assumption } from "#engine/assumptions";
import { assumptionFigures, assumptionName } from "#words/assumptionText";
import { TABLE } from "#words/en/rooms/pieces";
import { SHOP } from "#words/en/rooms/shop";
import { saveText } from "../../client/saveFile.ts";
import { LineField } from "../../pieces/PlainFields.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";

interface Named extends Assumption {
  readonly id: string;
  readonly name: string;
}

const ALL: readonly Named[] = Object.entries(ASSUMPTIONS).map(([id, one]) => ({ ...one, id, name: assumptionName(id) }));
const WORDS = SHOP.assumption;

const COLUMNS: readonly Column<Named>[] = [
  { name: WORDS.name, cell: ({ name }) => name },
  { name: WORDS.value, cell: (one) => assumptionFigures(one).value },
  { name: WORDS.range, cell: (one) => assumptionFigures(one).range },
  { name: WORDS.mark, cell: ({ mark }) => SHOP.marks[mark] },
  { name: WORDS.source, cell: ({ source }) => <span className="note">{source}</span> },
];

/** Every number that the model takes without having measured it. */
export function ModelAssumptions() {
  const [words, setWords] = useState("");
  const wanted = words.trim().toLowerCase();
  const found = ALL.filter(({ name, id }) => `${name} ${id}`.toLowerCase().includes(wanted));
  return (
    <>
      <p className="note">{SHOP.assumptionsWhy}</p>
      <LineField label={SHOP.findAssumption} type="search" value={words} onChange={setWords} />
      <PlainTable name={SHOP.assumptions} columns={COLUMNS} rows={found} keyOf={({ id }) => id} hasOwnFile />
      <button type="button" className="button" onClick={saveAll}>
        {TABLE.csv}
      </button>
    </>
  );
}

function saveAll(): void {
  const rows = ALL.map(({ name, value, low, high, unit, mark, source }) => [name, value, low, high, unit, SHOP.marks[mark], source]);
  saveText(csvText(Object.values(SHOP.assumptionCsv), rows), "assumptions.csv", "text/csv");
}
