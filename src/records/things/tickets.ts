import { RecordsFault } from "#contract/records/fault";
import { type Ticket, ticketWritten } from "#contract/records/ticket";
import { movesOf, putBackTo, type TicketState } from "#contract/records/ticketStates";
import { isOnlyMovedSince, isWorkLeft } from "#contract/records/ticketWork";
import type { Tickets } from "../records.ts";
import { type Session, timeOf } from "../session.ts";
import type { ChangeOn } from "../write.ts";
import { closeVisit, LEFT } from "./closeVisit.ts";
import { chargeByDefault } from "./defaultCharge.ts";
import type { Fields } from "./definition.ts";
import { moveBySigning, noteFinish, signedOf } from "./moveBySigning.ts";
import { paymentKind } from "./payments.ts";
import { visits } from "./plainKinds.ts";
import { checkedFields } from "./rows.ts";
import { store } from "./store.ts";
import { ticketKind } from "./ticketKind.ts";

export function tickets(session: Session): Tickets {
  const { get, list } = store(session, ticketKind);
  return {
    get,
    list,
    change: (id, fields, write) =>
      session.write(write, async (inside) => {
        const stored = store(inside, ticketKind);
        const changed = await stored.change(id, fields, onVersion(await stored.get(id), write));
        if (fields.stages !== undefined) await chargeByDefault(changed, inside, write.by);
        // What is ready has work left again where other work is planned.
        return fields.stages !== undefined && changed.state === "ready" ? moveBySigning(id, inside, write.by) : changed;
      }),
    create: (written, write) =>
      session.write(write, async (inside) => {
        const fields = checkedFields(ticketWritten, written, "tickets");
        const at = timeOf(inside.now());
        const begun = {
          state: "received",
          been: [{ state: "received", at, by: write.by, signedVersion: null, why: "" }],
          readyAt: null,
          collectedAt: null,
        };
        return store(inside, ticketKind).make({ ...fields, bowlerId: await bowlerOf(fields, inside) }, begun, { by: write.by });
      }),
    move: (id, to, write, why = "") =>
      session.write(write, async (inside) => {
        const stored = store(inside, ticketKind);
        const before = await stored.get(id);
        // Whoever signs the last stage while the shop is away, and then says that it is ready, says it after the signature did.
        if (before.state === to && before.been.at(-1)?.signedVersion !== null) return before;
        if (to === "ready" && why.trim() === "" && isWorkLeft(before, await signedOf(id, inside)))
          throw needsReason(id, "a reason, where a ticket is ready while planned work is not signed");
        const at = timeOf(inside.now());
        const moved = await stored.alter(
          id,
          (found) => move(found, { to, by: write.by, at, why: why.trim() }),
          onVersion(before, write),
          "move",
        );
        if (to === "ready") await noteFinish(moved, inside, write.by);
        // The last ball that leaves closes its visit; one that comes back opens it.
        if (LEFT.includes(to) || LEFT.includes(before.state)) await closeVisit(moved.visitId, paymentKind, inside, write.by);
        return moved;
      }),
  };
}

/** A change made on a version since which signatures alone moved the ticket is one on how it stands now. */
function onVersion(ticket: Ticket, { by, expectedVersion }: ChangeOn): ChangeOn {
  return { by, expectedVersion: isOnlyMovedSince(ticket, expectedVersion) ? ticket.version : expectedVersion };
}

async function bowlerOf(fields: Fields, session: Session): Promise<unknown> {
  if (fields.bowlerId !== null) return fields.bowlerId;
  return (await store(session, visits).get(fields.visitId as string)).bowlerId;
}

interface Move {
  readonly to: TicketState;
  readonly by: string;
  readonly at: string;
  readonly why: string;
}

function move(before: Ticket, { to, by, at, why }: Move): Fields {
  const allowed = movesOf(before);
  const isBack = !allowed.includes(to) && to === putBackTo(before.been);
  if (isBack && why === "") throw needsReason(before.id, "a reason, where a ticket is put back");
  if (!allowed.includes(to) && !isBack)
    throw new RecordsFault("refused", `tickets ${before.id}`, {
      problems: [{ path: "state", value: to, allowed: allowed.length === 0 ? "none: the ticket has ended" : allowed.join(", ") }],
    });
  // What is put back was not so; ready it had been all the while.
  const times = {
    ...(to === "ready" && !isBack ? { readyAt: at } : {}),
    ...(before.state === "collected" && isBack ? { collectedAt: null } : {}),
    ...(to === "collected" ? { collectedAt: at } : {}),
  };
  return { state: to, been: [...before.been, { state: to, at, by, signedVersion: null, why }], ...times };
}

function needsReason(id: string, allowed: string): RecordsFault {
  return new RecordsFault("refused", `tickets ${id}`, { problems: [{ path: "why", value: "", allowed }] });
}
