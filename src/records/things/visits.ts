import type { Visits } from "../records.ts";
import type { Session } from "../session.ts";
import { closeVisit } from "./closeVisit.ts";
import { paymentKind } from "./payments.ts";
import { visits as visitKind } from "./plainKinds.ts";
import { store } from "./store.ts";

/** A changed bill may be one that is paid, or is no more: the visit is closed by that, unless somebody says themselves how it stands. */
export function visits(session: Session): Visits {
  const stored = store(session, visitKind);
  return {
    ...stored,
    change: (id, fields, write) =>
      session.write(write, async (inside) => {
        const { by, expectedVersion } = write;
        const changed = await store(inside, visitKind).change(id, fields, { by, expectedVersion });
        const isOfBill = fields.charges !== undefined || fields.free !== undefined || fields.discountCents !== undefined;
        if (!isOfBill || fields.state !== undefined) return changed;
        await closeVisit(id, paymentKind, inside, by);
        return store(inside, visitKind).get(id);
      }),
  };
}
