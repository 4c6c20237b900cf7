import type { StageDoneWritten } from "#contract/records/stageDone";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { SideId } from "#engine/surface/padWork/sides";
import { BENCH } from "#words/en/rooms/bench";
import { MEASURE } from "#words/en/rooms/measure";
import { thisDevice } from "../shop/device.ts";
import { newKey } from "../shop/shopClient.ts";
import { useOutbox } from "../shop/useOutbox.tsx";
import { useActing } from "../shop/usePeople.ts";
import { useStock } from "../shop/useStock.ts";
import type { BallState, PlannedStage } from "./guide.ts";
import type { OnTheBench } from "./onTheBench.ts";
import { stageName } from "./plannedStages.ts";
import { stockUse } from "./stockUse.ts";

/** Writes down what is done at the bench, each with what was really used: sides, signatures, and that one is taken back. It waits in the outbox until the shop has it. */
export function useSign() {
  const { outbox } = useOutbox();
  const person = useActing();
  const stock = useStock();
  const write = ({ ticket, ball }: OnTheBench, what: string, entry: Partial<StageDoneWritten>): void => {
    if (person === null) return;
    const body = { ticketId: ticket.id, personId: person.id, initials: person.initials, doneAt: new Date().toISOString(), ...entry };
    outbox.add({ key: newKey(), path: "/api/stages-done", what: `${ball.name}: ${what}`, body });
  };
  const ofStage = ({ ticket }: OnTheBench, stage: PlannedStage) => ({
    stageId: stage.id,
    revision: ticket.revision,
    kind: stage.kind,
    what: stage.what,
    abrasive: stage.abrasive,
    way: isWay(stage.way) ? stage.way : null,
  });
  return {
    initials: person?.initials ?? null,
    personId: person?.id ?? null,
    /** A side has had its time: nothing is signed by it. */
    side(here: OnTheBench, stage: PlannedStage, side: SideId, state: BallState, seconds: number): void {
      const done = { signs: false, sidesDone: [side], sideSeconds: [seconds], secondsRun: seconds, startedAt: state.startedAt };
      write(here, stageName(stage), { ...ofStage(here, stage), ...done });
    },
    /** A side is begun here: another device then asks before it takes it over. */
    begin(here: OnTheBench, stage: PlannedStage, side: SideId): void {
      write(here, stageName(stage), { ...ofStage(here, stage), signs: false, began: { side, device: thisDevice() } });
    },
    /** Cautions were read at this ball: they are not shown again to the same person on another device. */
    read(here: OnTheBench, cautions: readonly string[]): void {
      write(here, BENCH.readCautions, { signs: false, cautionsRead: [...cautions] });
    },
    /** The whole stage, with what was really used. */
    stage(here: OnTheBench, stage: PlannedStage, how: Pick<StageDoneWritten, "note" | "secondsRun">): void {
      const sidesDone = [...stage.sideIds];
      write(here, stageName(stage), { ...ofStage(here, stage), sidesDone, used: stockUse(stock, stage.abrasive), ...how });
    },
    /** Sides of it that were worked once more: with the pad that was out already. */
    sidesAgain(here: OnTheBench, stage: PlannedStage, sides: readonly SideId[]): void {
      write(here, stageName(stage), { ...ofStage(here, stage), sidesDone: [...sides] });
    },
    /** Puts sides of a signed stage back into the work. */
    redo(here: OnTheBench, stage: PlannedStage, sides: readonly SideId[], seconds: number): void {
      const again = { signs: false, sidesAgain: [...sides], againSeconds: seconds, note: MEASURE.redoing };
      write(here, MEASURE.redo, { ...ofStage(here, stage), ...again });
    },
    /** An entry that the shop has not got yet is simply not sent. */
    takeBack(here: OnTheBench, entry: Pick<SignedEntry, "id">, why: string): void {
      void outbox.takeOut(entry.id).then((id) => {
        if (id !== null) write(here, BENCH.takenBack, { takesBack: id, signs: false, note: why });
      });
    },
  };
}

const WAYS = ["spinner, wet", "spinner, dry", "hand, wet", "hand, dry"] as const;

function isWay(way: string | null): way is (typeof WAYS)[number] {
  return WAYS.some((one) => one === way);
}
