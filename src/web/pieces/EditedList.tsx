import { type ReactNode, useState } from "react";
import type { Role } from "#contract/records/roles";
import { EDITING } from "#words/en/rooms/pieces";
import { type Typed, useEditing } from "../shop/useEditing.ts";
import { useKept } from "../shop/useKept.ts";
import { type Once, useOnce } from "../shop/useOnce.ts";
import { useMay } from "../shop/useSession.tsx";
import { useWrite } from "../shop/useShop.ts";
import { WriteFault } from "../shop/WriteFault.tsx";
import { type EditField, EditFields, EditForm, problemsBeside } from "./EditForm.tsx";
import { type Column, PlainTable } from "./PlainTable.tsx";

interface Listed {
  readonly id: string;
  readonly version: number;
}

interface ListProps<T extends Listed> {
  readonly name: string;
  /** Who may change and add, at the least; the others see it. */
  readonly least: Role;
  readonly rows: readonly T[];
  readonly columns: readonly Column<T>[];
  readonly fields: readonly EditField[];
  /** Names the drafts in this browser. */
  readonly memory: string;
  readonly touches: readonly string[];
  nameOf(thing: T): string;
  typedOf(thing: T): Typed;
  change(thing: T, typed: Typed, made: { readonly version: number }): Promise<T>;
  read(current: unknown): Promise<T | null>;
  readonly adding: { readonly title: string; readonly empty: Typed; make(typed: Typed, once: Once): Promise<T> };
}

/** A short list whose entries are changed in place, and added to. */
export function EditedList<T extends Listed>(props: ListProps<T>) {
  const { name, least, rows, columns, nameOf } = props;
  const may = useMay()(least);
  const [open, setOpen] = useState<string | null>(null);
  const [adds, setAdds] = useState(false);
  const opened = rows.find(({ id }) => id === open);
  const change: Column<T> = {
    name: EDITING.change,
    kind: "press",
    cell: (row) => (
      <button type="button" className="button" aria-label={`${EDITING.change}: ${nameOf(row)}`} onClick={() => setOpen(row.id)}>
        {EDITING.change}
      </button>
    ),
  };
  return (
    <>
      {opened !== undefined && <Entry key={opened.id} {...props} thing={opened} onClose={() => setOpen(null)} />}
      {rows.length > 0 && <PlainTable name={name} columns={may ? [...columns, change] : columns} rows={rows} keyOf={({ id }) => id} />}
      {!may ? null : adds ? (
        <Adding {...props} onClose={() => setAdds(false)} />
      ) : (
        <button type="button" className="button" onClick={() => setAdds(true)}>
          {props.adding.title}
        </button>
      )}
    </>
  );
}

function Entry<T extends Listed>(props: ListProps<T> & { readonly thing: T; onClose(): void }) {
  const { thing, memory, typedOf, change, read, touches, fields, onClose } = props;
  const editing = useEditing({
    memory: `${memory}.${thing.id}`,
    thing,
    typedOf,
    send: (typed, made) => change(thing, typed, made),
    read,
    touches,
    onClose,
  });
  return (
    <Framed title={props.nameOf(thing)}>
      <EditForm fields={fields} editing={{ ...editing, typed: editing.typed ?? typedOf(thing) }} />
    </Framed>
  );
}

function Adding<T extends Listed>({ fields, memory, touches, adding, onClose }: ListProps<T> & { onClose(): void }) {
  const [typed, setTyped] = useKept(`${memory}.new`, () => adding.empty);
  const [once] = useOnce();
  const write = useWrite((asked: Typed) => adding.make(asked, once), touches);
  const problems = problemsBeside(write.error, fields);
  const close = () => {
    setTyped(adding.empty);
    onClose();
  };
  return (
    <Framed title={adding.title}>
      <form
        className="edit-form"
        onSubmit={(event) => {
          event.preventDefault();
          write.mutate(typed, { onSuccess: close });
        }}
      >
        <EditFields
          fields={fields}
          typed={typed}
          problems={problems}
          onSet={(path, value) => setTyped((old) => ({ ...old, [path]: value }))}
        />
        {problems.length === 0 && <WriteFault error={write.error} />}
        <div className="buttons">
          <button type="submit" className="button primary" disabled={write.isPending}>
            {EDITING.keep}
          </button>
          <button type="button" className="button" disabled={write.isPending} onClick={close}>
            {EDITING.leave}
          </button>
        </div>
      </form>
    </Framed>
  );
}

function Framed({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="amount-form" aria-label={title}>
      <h3>{title}</h3>
      {children}
    </section>
  );
}
