import { BENCH } from "#words/en/rooms/bench";
import type { OnTheBench } from "../../benchWork/signedStages.ts";
import { stockUse } from "../../benchWork/stockUse.ts";
import { newKey } from "../../shop/shopClient.ts";
import { useActing } from "../../shop/useActing.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useStock } from "../../shop/useStock.ts";
import type { GuideState, PlannedStage, Step } from "./guide.ts";

/** Signs stages: with whose initials, and how. What is signed waits in the outbox until the shop has it. */
export function useSign() {
  const { outbox } = useOutbox();
  const person = useActing();
  const stock = useStock();
  return {
    initials: person?.initials ?? null,
    write({ ticket, ball }: OnTheBench, step: Step, stage: PlannedStage, state: GuideState): void {
      if (person === null) return;
      outbox.add({
        key: newKey(),
        path: "/api/stages-done",
        what: `${ball.name}: ${stage.what}`,
        body: {
          ticketId: ticket.id,
          personId: person.id,
          initials: person.initials,
          startedAt: state.startedAt,
          doneAt: new Date().toISOString(),
          what: stage.what,
          abrasive: stage.abrasive,
          way: isWay(stage.way) ? stage.way : null,
          sideSeconds: state.sideSeconds,
          used: stockUse(stock, stage.abrasive),
          note: state.onSight.includes(step.ticketId) ? BENCH.scanSkipped : "",
        },
      });
    },
  };
}

const WAYS = ["spinner, wet", "spinner, dry", "hand, wet", "hand, dry"];

function isWay(way: string | null): boolean {
  return way !== null && WAYS.includes(way);
}
