import type { StageDone } from "#contract/records/stageDone";
import type { Definition } from "./definition.ts";
import { moveBySigning, signedOf } from "./moveBySigning.ts";
import { stageRead } from "./stageRead.ts";
import { movementKind } from "./stock.ts";
import { store } from "./store.ts";

export const stageKind: Definition<StageDone> = {
  ...stageRead,
  async check({ id, ticketId, takesBack }, _before, session) {
    if (takesBack === null) return [];
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
