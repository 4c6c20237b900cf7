import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import { putBackTo } from "#contract/records/ticketStates";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { BALL_LOG } from "#words/en/rooms/ball";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { abrasiveName, stageName } from "../../benchWork/plannedStages.ts";
import { TakeBack } from "../../benchWork/TakeBack.tsx";
import { ReasonPress } from "../../pieces/ReasonPress.tsx";
import { usePeople } from "../../shop/usePeople.ts";
import { For } from "../../shop/useSession.tsx";
import { useMoveTicket } from "../../shop/useTicket.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

interface HistoryProps {
  readonly here: OnTheBench;
  readonly work: Work<SignedEntry>;
  /** Everything that was written down at the bench for it, by the shop's own list. */
  readonly done: readonly StageDone[];
}

/** Where the ticket has been, what was signed on it, also for a plan of before, and who did it. The last state can be put back and a signature taken back. */
export function History({ here, work, done }: HistoryProps) {
  const { ticket } = here;
  const times = useShopTimes();
  return (
    <section className="plate">
      <h2>{TICKET.history}</h2>
      <ol className="history">
        {momentsOf(ticket, work, done).map((moment) => (
          <li key={`${moment.at} ${moment.key}`}>
            <span>{times.at(moment.at)} · </span>
            {moment.state !== null && <StateMoment {...moment.state} />}
            {moment.signed !== null && <SignedMoment here={here} entry={moment.signed} />}
            {moment.back !== null && BALL_LOG.takenBack(moment.back.initials, moment.back.note)}
          </li>
        ))}
      </ol>
      <For least="counter">
        <PutBack ticket={ticket} />
      </For>
    </section>
  );
}

type State = Ticket["been"][number];

interface Moment {
  readonly at: string;
  readonly key: string;
  readonly state: State | null;
  readonly signed: SignedEntry | null;
  readonly back: StageDone | null;
}

function momentsOf({ been }: Ticket, { signed }: Work<SignedEntry>, done: readonly StageDone[]): readonly Moment[] {
  const nothing = { state: null, signed: null, back: null };
  const moments = [
    ...[...been.entries()].map(([i, state]): Moment => ({ ...nothing, at: state.at, key: String(i), state })),
    ...signed.map((entry): Moment => ({ ...nothing, at: entry.at, key: entry.id, signed: entry })),
    ...done.filter(({ takesBack }) => takesBack !== null).map((back): Moment => ({ ...nothing, at: back.doneAt, key: back.id, back })),
  ];
  return moments.toSorted((a, b) => a.at.localeCompare(b.at));
}

function StateMoment({ state, by, signedVersion, why }: State) {
  const initials = usePeople().data?.find(({ id }) => id === by)?.initials ?? "–";
  const parts = [TICKET_STATE_WORDS[state], initials, signedVersion === null ? "" : TICKET.bySigning, why];
  return <>{parts.filter((part) => part !== "").join(" · ")}</>;
}

function SignedMoment({ here, entry }: { readonly here: OnTheBench; readonly entry: SignedEntry }) {
  const name = stageName({ kind: entry.kind, what: entry.label });
  const parts = [TICKET.signedOf([name, abrasiveName(entry.abrasive)].filter((part) => part !== null).join(", ")), entry.initials];
  return (
    <>
      {parts.join(" · ")} <TakeBack here={here} entry={entry} />
    </>
  );
}

function PutBack({ ticket }: { readonly ticket: Ticket }) {
  const to = putBackTo(ticket.been);
  const back = useMoveTicket(ticket);
  if (to === null) return null;
  return (
    <ReasonPress
      // Put back it has another state, and the next press is another one.
      key={ticket.state}
      press={TICKET.putBack(TICKET_STATE_WORDS[to])}
      label={TICKET.putBackWhy}
      act={TICKET.putBackIt}
      className="button"
      isBusy={back.isPending}
      onSay={(why) => back.mutate({ to, why })}
    >
      <WriteFault error={back.error} />
    </ReasonPress>
  );
}
