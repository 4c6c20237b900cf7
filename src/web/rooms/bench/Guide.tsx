import { useEffect, useState } from "react";
import { Redirect, useSearchParams } from "wouter";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { StageStanding } from "#engine/signed/entries";
import type { Work } from "#engine/signed/work";
import { BENCH } from "#words/en/rooms/bench";
import {
  AT_THE_BEGINNING,
  afterACut,
  type GuideState,
  nameOf,
  paused,
  readOf,
  type Step,
  shownAgain,
  stateOf,
  stepsOf,
  unseenOf,
} from "../../benchWork/guide.ts";
import { type OnTheBench, signedHere, workHere } from "../../benchWork/onTheBench.ts";
import { useKept } from "../../shop/useKept.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { useActing } from "../../shop/usePeople.ts";
import { AllDone } from "./AllDone.tsx";
import { LookBack, momentsOf } from "./LookBack.tsx";
import { StepPlace } from "./StepPlace.tsx";
import { StepScreen } from "./StepScreen.tsx";
import { asUsed, cautionsAsUsed } from "./used.ts";

const AGAIN_MS = 200;
/** The same for every way in which the guide is opened: what is kept hangs on the balls. */
const MEMORY = "gritwright.bench";

/** The next step of the balls on the bench, until none is left. */
export function Guide({ onBench }: { readonly onBench: readonly OnTheBench[] }) {
  const [kept, setKept] = useKept(MEMORY, () => AT_THE_BEGINNING);
  const [now, setNow] = useState(() => Date.now());
  // A clock that ran when the page went stands until somebody has said whether the spinner ran on.
  useEffect(() => setKept(afterACut), [setKept]);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), AGAIN_MS);
    return () => clearInterval(timer);
  }, []);
  const { waiting } = useOutbox();
  // Measuring sent one side back: once it is worked it is read again there.
  const readAgain = useSearchParams()[0].get("read");
  const works = new Map(onBench.map(({ ticket, done }) => [ticket.id, workHere(ticket, done, waiting)]));
  const tickets = onBench.map(({ ticket }) => ticket);
  const total = tickets.reduce((sum, { stages }) => sum + stages.length, 0);
  const steps = stepsOf(tickets, (ticketId) => openStages(tickets, ticketId, works.get(ticketId)));
  const [step] = steps;
  if (total === 0) return <p className="bench-big">{BENCH.nothingToDo}</p>;
  if (readAgain !== null && onBench.length === 1 && (step === undefined || step.stage.kind === "check")) {
    const [{ ticket, ball }] = onBench;
    return <Redirect to={`/measure?ball=${ball.id}&ticket=${ticket.id}&side=${readAgain}`} replace />;
  }
  if (step === undefined) return <AllDone onBench={onBench} />;
  const here = onBench.find(({ ticket }) => ticket.id === step.ticketId);
  const work = works.get(step.ticketId);
  const standing = work?.stages.find(({ stage }) => stage.id === step.stage.id);
  if (here === undefined || work === undefined || standing === undefined) return null;
  const place = { at: total - steps.length + 1, of: total };
  const shown = { onBench, here, work, standing, kept, nowMs: now, onChange: setKept };
  return <AtStep key={`${step.ticketId} ${step.stage.id}`} {...shown} step={step} place={place} />;
}

interface AtProps {
  readonly onBench: readonly OnTheBench[];
  readonly here: OnTheBench;
  readonly work: Work<SignedEntry>;
  readonly standing: StageStanding<SignedEntry>;
  readonly step: Step;
  readonly place: { readonly at: number; readonly of: number };
  readonly kept: GuideState;
  readonly nowMs: number;
  onChange(change: (old: GuideState) => GuideState): void;
}

/** One step with its place above it; or, gone back from it, what was done before. */
function AtStep({ onBench, here, work, standing, step, place, kept, nowMs, onChange }: AtProps) {
  const [back, setBack] = useState(0);
  const me = useActing()?.id ?? null;
  const { waiting } = useOutbox();
  const planned = { ...step.stage, secondsPerSide: standing.againSeconds ?? step.stage.secondsPerSide };
  const own = stateOf(kept, step.ticketId, nameOf(planned, standing.sidesLeft[0]));
  const stage = asUsed(planned, own, work, standing);
  // What a step before it asked for counts here too: it may have been signed on another device.
  const at = here.ticket.stages.findIndex(({ id }) => id === stage.id);
  const before = here.ticket.stages.slice(0, at).flatMap((one) => one.cautions);
  const cautions = [...new Set([...before, ...cautionsAsUsed(step.stage, stage)])];
  const read = readOf(writtenDown(onBench, waiting), me, nowMs);
  const moments = momentsOf(work, standing);
  const moment = back === 0 ? undefined : moments[back - 1];
  return (
    <>
      <StepPlace
        here={here}
        work={work}
        {...place}
        onBack={
          back < moments.length
            ? () => {
                onChange((old) => paused(old, step.ticketId, nowMs));
                setBack(back + 1);
              }
            : null
        }
        onShowCautions={() => onChange((old) => shownAgain(old, cautions))}
      />
      {moment !== undefined ? (
        <LookBack key={moment.entry.id} here={here} moment={moment} onForward={() => setBack(0)} />
      ) : (
        <StepScreen
          here={here}
          planned={planned}
          stage={stage}
          standing={standing}
          work={work}
          unseen={unseenOf(kept, cautions, read, nowMs)}
          state={kept}
          nowMs={nowMs}
          onChange={onChange}
        />
      )}
    </>
  );
}

/** All that was written down for the balls on the bench, also here and not sent yet. */
function writtenDown(onBench: readonly OnTheBench[], waiting: ReturnType<typeof useOutbox>["waiting"]) {
  return [...onBench.flatMap(({ done }) => done), ...waiting.flatMap((write) => signedHere(write) ?? [])];
}

function openStages(
  tickets: readonly Ticket[],
  ticketId: string,
  work: Work<SignedEntry> | undefined,
): readonly Ticket["stages"][number][] {
  const open = new Set(work?.stages.flatMap(({ stage, by }) => (by === null ? [stage.id] : [])));
  return (tickets.find(({ id }) => id === ticketId)?.stages ?? []).filter(({ id }) => open.has(id));
}
