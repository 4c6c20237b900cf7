import { ABRASIVES, type Abrasive } from "#engine/surface/abrasives";
import { BENCH } from "#words/en/rooms/bench";
import { actingPerson } from "../../shop/person.ts";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useRead } from "../../shop/useShop.ts";
import type { OnTheBench } from "./BenchRoom.tsx";
import type { GuideState, PlannedStage, Step } from "./guide.ts";

/** Signs stages: with whose initials, and how. What is signed waits in the outbox until the shop has it. */
export function useSign() {
  const { outbox } = useOutbox();
  const people = useRead(["people"], () => answered(shop.people.$get({ query: { state: "works here", order: "oldest first" } }))).data
    ?.items;
  const stock = useRead(["stock-items"], () => answered(shop["stock-items"].$get({ query: { state: "in use", limit: "200" } }))).data
    ?.items;
  const person = people?.find(({ id }) => id === actingPerson()) ?? people?.[0] ?? null;
  return {
    initials: person?.initials ?? null,
    write({ ticket, ball }: OnTheBench, step: Step, stage: PlannedStage, state: GuideState): void {
      if (person === null) return;
      const item = (stock ?? []).find((one) => isUsedBy(one, stage));
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
          used: item === undefined ? [] : [{ stockItemId: item.id, quantity: 1 }],
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

const STOCK_KIND: Readonly<Partial<Record<Abrasive["kind"], string>>> = {
  foamPad: "pad",
  wetPaper: "wet paper",
  cuttingPolish: "polish",
  slipPolish: "polish",
  compound: "compound",
};

/** A pad is used once a ball; what is counted in millilitres is not guessed. */
function isUsedBy({ kind, number, unit }: { kind: string; number: number | null; unit: string }, { abrasive }: PlannedStage): boolean {
  const known: Abrasive | undefined = abrasive === null ? undefined : (ABRASIVES as Readonly<Record<string, Abrasive>>)[abrasive];
  if (known === undefined || (unit !== "uses" && unit !== "pieces")) return false;
  return STOCK_KIND[known.kind] === kind && (known.grade?.number ?? null) === number;
}
