import type { StageDone } from "#contract/records/stageDone";
import { workOfTicket } from "#contract/records/ticketWork";
import type { Problem } from "#engine/fault";
import type { Session } from "../session.ts";
import type { Definition } from "./definition.ts";
import { moveBySigning, signedOf } from "./moveBySigning.ts";
import { stageRead } from "./stageRead.ts";
import { movementKind } from "./stock.ts";
import { store } from "./store.ts";
import { ticketKind } from "./ticketKind.ts";

export const stageKind: Definition<StageDone> = {
  ...stageRead,
  async check(stage, before, session) {
    const { id, ticketId, takesBack } = stage;
    if (takesBack === null) return before === null ? planProblems(stage, session) : [];
    const stages = store(session, stageRead);
    const taken = await stages.get(takesBack);
    const isFree = (await signedOf(ticketId, session)).every((one) => one.id === id || one.takesBack !== takesBack);
    return taken.ticketId === ticketId && taken.takesBack === null && isFree
      ? []
      : [{ path: "takesBack", value: takesBack, allowed: "an entry of the same ticket that stands" }];
  },
  async alsoWrite({ id, ticketId, doneAt, used, takesBack }, _before, session, by) {
    const movements = store(session, movementKind);
    const move = (uses: StageDone["used"], sign: 1 | -1) =>
      uses.map(({ stockItemId, quantity }) => ({ stockItemId, at: doneAt, change: sign * quantity, why: "used", stageDoneId: id }));
    // What was signed by mistake was not used.
    const returned = takesBack === null ? [] : (await store(session, stageRead).get(takesBack)).used;
    for (const movement of [...move(used, -1), ...move(returned, 1)]) await movements.create(movement, { by });
    await moveBySigning(ticketId, session, by);
  },
};

/** What is signed is a stage of the plan, whole, with what was used, and once; of a plan that has been changed since the shop knows no more. */
async function planProblems(entry: StageDone, session: Session): Promise<Problem[]> {
  const { ticketId, stageId, revision, signs, kind, abrasive, sidesDone } = entry;
  const ticket = await store(session, ticketKind).get(ticketId);
  if (stageId === null || revision !== ticket.revision) return [];
  const planned = ticket.stages.find(({ id }) => id === stageId);
  if (planned === undefined)
    return [{ path: "stageId", value: stageId, allowed: `a stage of the plan: ${ticket.stages.map(({ id }) => id).join(", ") || "none"}` }];
  const unused = signs && kind === "cut" && abrasive === null && planned.abrasive !== null;
  const standing = workOfTicket(ticket, await signedOf(ticketId, session)).stages.find(({ stage }) => stage.id === stageId);
  const left = standing?.sidesLeft.filter((side) => !sidesDone.includes(side)) ?? [];
  // Another abrasive over a signed stage is another cut, and is written down.
  const by = signs && standing?.state === "signed" && standing.by?.abrasive === abrasive ? standing.by : null;
  return [
    ...(unused ? [{ path: "abrasive", value: abrasive, allowed: "what was used" }] : []),
    ...(by === null
      ? []
      : [{ path: "stageId", value: stageId, allowed: `a stage that nobody has signed; ${by.initials} signed it already` }]),
    // An older page says no sides at all: it signs for the whole.
    ...(signs && sidesDone.length > 0 && left.length > 0
      ? [{ path: "sidesDone", value: sidesDone.join(), allowed: `all sides of the stage; ${left.join(", ")} are not done` }]
      : []),
  ];
}
