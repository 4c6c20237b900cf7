import { useState } from "react";
import { SHOP } from "#words/en/rooms/shop";
import { WordField } from "../../pieces/PlainFields.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

type Kind = keyof typeof SHOP.importKinds;

interface List {
  /** Sent again with it, the list is taken in once. */
  readonly key: string;
  readonly kind: Kind;
  readonly csv: string;
  /** Field by column; null: as the shop reads the headings. */
  readonly mapping: Readonly<Record<string, string>> | null;
}

interface Done {
  readonly importId: string;
  readonly added: number;
  readonly alreadyThere: number;
}

/** What an import wrote reaches every room. */
const TOUCHES = ["bowlers", "balls", "search", "audit"] as const;

/** A table of customers or balls: looked at first, then taken in as a whole, and taken out again if it was the wrong one. */
export function ImportList() {
  const [kind, setKind] = useState<Kind>("bowlers");
  const [list, setList] = useState<List | null>(null);
  const [isEmpty, setEmpty] = useState(false);
  // The last import can still be undone after a reload.
  const [done, setDone] = useKept<Done | null>("gritwright.shop.import", () => null);
  const open = async (file: File | undefined) => {
    if (file === undefined) return;
    const csv = textOf(await file.arrayBuffer());
    setEmpty(csv.trim() === "");
    setList(csv.trim() === "" ? null : { key: newKey(), kind, csv, mapping: null });
  };
  return (
    <>
      <p className="note">{SHOP.importsWhy}</p>
      {done !== null && <Undo done={done} onUndone={() => setDone(null)} />}
      <WordField
        label={SHOP.importKind}
        value={kind}
        words={SHOP.importKinds}
        onChange={(chosen) => {
          setKind(chosen as Kind);
          setList((old) => (old === null ? null : { ...old, kind: chosen as Kind, mapping: null }));
        }}
      />
      <label className="field plain-field">
        {SHOP.file}
        <input type="file" accept=".csv,.txt,text/csv" onChange={({ target }) => void open(target.files?.[0])} />
      </label>
      {isEmpty && (
        <p role="alert" className="field-problem">
          {SHOP.emptyFile}
        </p>
      )}
      {list !== null && (
        <Preview
          list={list}
          onMap={(mapping) => setList({ ...list, mapping })}
          onDone={(taken) => {
            setDone(taken);
            setList(null);
          }}
        />
      )}
    </>
  );
}

/** UTF-8, or what older spreadsheets write where it is not. */
function textOf(bytes: ArrayBuffer): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) return new TextDecoder("windows-1252").decode(bytes);
    throw error;
  }
}

interface PreviewProps {
  readonly list: List;
  onMap(mapping: Readonly<Record<string, string>>): void;
  onDone(done: Done): void;
}

const asked = ({ kind, csv, mapping }: List) => ({ kind, csv, ...(mapping === null ? {} : { mapping: { ...mapping } }) });
const previewed = (list: List) => answered(shop.imports.preview.$post({ json: asked(list) }));
type Seen = Awaited<ReturnType<typeof previewed>>;

function Preview({ list, onMap, onDone }: PreviewProps) {
  const seen = useRead(["imports", list.key, list.kind, list.mapping], () => previewed(list));
  const apply = useWrite(
    (one: List) => answered(shop.imports.$post({ json: asked(one) }, { headers: { "Idempotency-Key": one.key } })),
    TOUCHES,
  );
  if (seen.error !== null) return <WriteFault error={seen.error} />;
  if (seen.data === undefined) return null;
  const { rows, alreadyThere, problems } = seen.data;
  const count = rows - alreadyThere;
  return (
    <>
      <Columns seen={seen.data} onMap={onMap} />
      <p role="status">{SHOP.rows(rows, alreadyThere)}</p>
      {problems.length > 0 ? <Problems problems={problems} /> : <Sample seen={seen.data} />}
      <button
        type="button"
        className="button primary"
        disabled={problems.length > 0 || count < 1 || apply.isPending}
        onClick={() => apply.mutate(list, { onSuccess: onDone })}
      >
        {SHOP.apply(count)}
      </button>
      <WriteFault error={apply.error} />
    </>
  );
}

/** Which column feeds which field; what the shop did not recognise is chosen here. */
function Columns({ seen: { columns, mapping, fields }, onMap }: { readonly seen: Seen; onMap: PreviewProps["onMap"] }) {
  const words = { "": SHOP.noField, ...Object.fromEntries(fields.map((field) => [field, fieldName(field)])) };
  const choose = (column: string, field: string) => {
    const { [column]: _before, ...others } = mapping;
    onMap(field === "" ? others : { ...others, [column]: field });
  };
  return (
    <div className="field-row">
      {columns.map((column) => (
        <WordField
          key={column}
          label={SHOP.feeds(column)}
          value={mapping[column] ?? ""}
          words={words}
          onChange={(field) => choose(column, field)}
        />
      ))}
    </div>
  );
}

function fieldName(field: string): string {
  return SHOP.fields[field] ?? field;
}

function Problems({ problems }: { readonly problems: Seen["problems"] }) {
  const words = SHOP.problem;
  const columns: readonly Column<Seen["problems"][number]>[] = [
    { name: words.row, cell: ({ row }) => row },
    { name: words.column, cell: ({ column }) => column },
    { name: words.value, cell: ({ value }) => `“${value}”` },
    { name: words.allowed, cell: ({ allowed }) => allowed },
  ];
  return (
    <div role="alert" className="failed">
      <p>{SHOP.problems}</p>
      <PlainTable name={SHOP.problems} columns={columns} rows={problems} keyOf={({ row, column }) => `${row} ${column}`} />
    </div>
  );
}

function Sample({ seen: { sample, mapping } }: { readonly seen: Seen }) {
  const fields = [...new Set(Object.values(mapping))];
  const columns: readonly Column<Record<string, unknown>>[] = fields.map((field) => ({
    name: fieldName(field),
    cell: (row) => shown(row[field] ?? (row.core as Record<string, unknown> | undefined)?.[field]),
  }));
  return (
    <>
      <p>{SHOP.sample}</p>
      <PlainTable name={SHOP.sample} columns={columns} rows={sample} keyOf={(row) => JSON.stringify(row)} />
    </>
  );
}

function shown(value: unknown): string {
  return value === null || value === undefined ? "" : String(value);
}

function Undo({ done, onUndone }: { readonly done: Done; onUndone(): void }) {
  const [key] = useState(newKey);
  const undo = useWrite(
    (id: string) => answered(shop.imports[":id"].undo.$post({ param: { id } }, { headers: { "Idempotency-Key": key } })),
    TOUCHES,
  );
  return (
    <div role="status">
      <p>{undo.data === undefined ? SHOP.done(done.added, done.alreadyThere) : SHOP.undone(undo.data.takenOut)}</p>
      {undo.data === undefined ? (
        <button type="button" className="button" disabled={undo.isPending} onClick={() => undo.mutate(done.importId)}>
          {SHOP.undo}
        </button>
      ) : (
        <button type="button" className="button" onClick={onUndone}>
          {SHOP.seen}
        </button>
      )}
      <WriteFault error={undo.error} />
    </div>
  );
}
