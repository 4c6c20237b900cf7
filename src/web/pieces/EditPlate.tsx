import type { ReactNode } from "react";
import type { Role } from "#contract/records/roles";
import { EDITING } from "#words/en/rooms/pieces";
import type { Editing } from "../shop/useEditing.ts";
import { useMay } from "../shop/useSession.tsx";
import { type EditField, EditForm } from "./EditForm.tsx";
import { Facts } from "./Facts.tsx";

interface PlateProps {
  readonly title: string;
  /** Who may change it, at the least; the others see it. */
  readonly least: Role;
  readonly rows: readonly (readonly [name: string, value: ReactNode])[];
  readonly fields: readonly EditField[];
  readonly editing: Editing;
  /** Under the facts and under the form alike. */
  readonly children?: ReactNode;
}

/** What is known of a thing, and the same as a form, in the same place. */
export function EditPlate({ title, least, rows, fields, editing, children }: PlateProps) {
  const { typed } = editing;
  const may = useMay();
  return (
    <section className="plate">
      <div className="ball-work-head">
        <h2>{title}</h2>
        {typed === null && may(least) && (
          <button type="button" className="button" aria-label={`${EDITING.change}: ${title}`} onClick={editing.begin}>
            {EDITING.change}
          </button>
        )}
      </div>
      {typed === null ? <Facts rows={rows} /> : <EditForm fields={fields} editing={{ ...editing, typed }} />}
      {children}
    </section>
  );
}
