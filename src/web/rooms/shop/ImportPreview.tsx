import { BALL_FIELDS } from "#contract/records/ballFields";
import { BOWLER_FIELDS } from "#contract/records/bowlerFields";
import { type Described, placedIn } from "#contract/records/described";
import { BALL_LOG } from "#words/en/rooms/ball";
import { BOWLER } from "#words/en/rooms/bowler";
import { SHOP } from "#words/en/rooms/shop";
import type { Label } from "../../pieces/describedForm.ts";
import { WordField } from "../../pieces/PlainFields.tsx";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

export type ImportKind = keyof typeof SHOP.importKinds;

export interface List {
  /** Sent again with it, the list is taken in once. */
  readonly key: string;
  readonly kind: ImportKind;
  readonly csv: string;
  /** Field by column; null: as the shop reads the headings. */
  readonly mapping: Readonly<Record<string, string>> | null;
}

export interface Done {
  readonly importId: string;
  readonly added: number;
  readonly alreadyThere: number;
}

/** What an import wrote reaches every room. */
export const IMPORT_TOUCHES = ["bowlers", "balls", "search", "audit"] as const;

interface PreviewProps {
  readonly list: List;
  onMap(mapping: Readonly<Record<string, string>>): void;
  onDone(done: Done): void;
}

const asked = ({ kind, csv, mapping }: List) => ({ kind, csv, ...(mapping === null ? {} : { mapping: { ...mapping } }) });
const previewed = (list: List) => answered(shop.imports.preview.$post({ json: asked(list) }));
type Seen = Awaited<ReturnType<typeof previewed>>;

interface SeenProps {
  readonly kind: ImportKind;
  readonly seen: Seen;
}

/** What a list would do: which column feeds which field, the rows that cannot be taken, else the first as they would be kept. */
export function ImportPreview({ list, onMap, onDone }: PreviewProps) {
  const seen = useRead(["imports", list.key, list.kind, list.mapping], () => previewed(list));
  const apply = useWrite(
    (one: List) => answered(shop.imports.$post({ json: asked(one) }, { headers: { "Idempotency-Key": one.key } })),
    IMPORT_TOUCHES,
  );
  if (seen.error !== null) return <WriteFault error={seen.error} />;
  if (seen.data === undefined) return null;
  const { rows, alreadyThere, problems } = seen.data;
  const count = rows - alreadyThere;
  return (
    <>
      <Columns kind={list.kind} seen={seen.data} onMap={onMap} />
      <p role="status">{SHOP.rows(rows, alreadyThere)}</p>
      {problems.length > 0 ? <Problems problems={problems} /> : <Sample kind={list.kind} seen={seen.data} />}
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
function Columns({ kind, seen: { columns, mapping, fields }, onMap }: SeenProps & { onMap: PreviewProps["onMap"] }) {
  const words = { "": SHOP.noField, ...Object.fromEntries(fields.map((field) => [field, NAMES[kind][field] ?? field])) };
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

/** Fields are called as in their forms; the owner of a ball is no field of one. */
const NAMES: Readonly<Record<ImportKind, Readonly<Record<string, string>>>> = {
  bowlers: importNames(BOWLER_FIELDS, BOWLER.fields),
  balls: { ...importNames(BALL_FIELDS, BALL_LOG.fields), owner: BALL_LOG.owner },
};

/** What a column may feed goes by its own name, also in a group: `massLb`. */
function importNames(described: Described, fields: Readonly<Record<string, Label>>): Readonly<Record<string, string>> {
  return Object.fromEntries(
    placedIn(described).flatMap(({ path, key, field }) => {
      const name = fields[path];
      return field.imported === undefined || typeof name !== "string" ? [] : [[key, name]];
    }),
  );
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

function Sample({ kind, seen: { sample, mapping } }: SeenProps) {
  const fields = [...new Set(Object.values(mapping))];
  const columns: readonly Column<Record<string, unknown>>[] = fields.map((field) => ({
    name: NAMES[kind][field] ?? field,
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
