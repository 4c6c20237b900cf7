import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import { benchBallOf } from "#contract/records/benchBall";
import type { Reading, ReadingWritten } from "#contract/records/reading";
import type { ReferenceBall } from "#contract/records/stock";
import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import type { SideId } from "#engine/surface/padWork/sides";
import { OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import { MEASURE, PLACE_LABELS } from "#words/en/rooms/measure";
import { type Comparison, READ_ORDER, sheenRow, testerRows, type Way } from "../../measured/entries.ts";
import { type Judged, judgedBySheen, judgedByTester } from "../../measured/judged.ts";
import { lastGo, lastTaken, type Read, readAt, readingsNow } from "../../measured/readings.ts";
import { targetFinish } from "../../measured/targetFinish.ts";
import { type ReadingHere, readingsThatStand } from "../../shop/readingsHere.ts";
import { newKey } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";

interface Draft {
  /** Null: as the last readings were taken. */
  readonly when: Reading["when"] | null;
  readonly how: Way | null;
  /** The place that is being read; null: the first that was not. */
  readonly place: Place | null;
  readonly typed: string;
}

const NOTHING: Draft = { when: null, how: null, place: null, typed: "" };

export interface MeasuringOf {
  readonly ball: Ball;
  readonly ticket: Ticket | null;
  readonly work: Work<SignedEntry> | null;
  /** When sides were put back into the work, and which. */
  readonly again: readonly { readonly at: string; readonly sides: readonly string[] }[];
  /** All readings of the ball, as the shop has them. */
  readonly read: readonly ReadingHere[];
  readonly references: readonly ReferenceBall[];
  /** Midnight before today, of a ball without a ticket. */
  readonly today: string;
  /** The place that the address asks for. */
  readonly asked: Place | null;
}

export interface Measuring {
  readonly when: Reading["when"];
  readonly how: Way;
  readonly at: Place;
  readonly typed: string;
  /** Places in view. */
  readonly places: readonly Place[];
  readonly judged: Judged;
  readonly reference: ReferenceBall | null;
  /** What *undo* takes back; empty where there is nothing, or the shop has not said yet what it is called there. */
  readonly undo: readonly ReadingHere[];
  readonly areWaiting: boolean;
  readAt(place: Place): Read | null;
  /** The same before the work, for looking at both. */
  readBefore(place: Place): Read | null;
  set(change: Partial<Draft>): void;
  setHow(how: Way): void;
  setReference(id: string): void;
  /** Writes down what was read here, and goes on to the next place. */
  saveTester(um: readonly number[]): void;
  saveSheen(comparison: Comparison): void;
  takeBack(readings: readonly ReadingHere[]): void;
  /** What can be taken back at the place in view. */
  readonly here: readonly ReadingHere[];
  /** Every reading of the ball that stands. */
  readonly all: readonly ReadingHere[];
}

/** A ball that is being measured: what was read, what is read now, what it says. Everything is saved as it is entered. */
export function useMeasuring({ ball, ticket, work, again, read, references, today, asked }: MeasuringOf): Measuring {
  const { outbox, waiting } = useOutbox();
  const [draft, setDraft] = useDraft(ticket?.id ?? ball.id);
  const [usualHow, setUsualHow] = useKept<Way>("gritwright.measuring.how", () => "reference ball");
  const [referenceId, setReference] = useState<string | null>(null);
  const all = readingsThatStand(read, ball.id, waiting);
  const last = lastTaken(all, ticket?.id ?? null, today);
  const usual = usualWhen(ticket, work, last);
  const when = ticket === null ? usual : (draft.when ?? usual);
  const how = draft.how ?? last?.how ?? usualHow;
  const ask = { ticketId: ticket?.id ?? null, from: today, how, work, again };
  const now = readingsNow(all, { ...ask, when });
  const before = readingsNow(all, { ...ask, when: "before" });
  const wanted = targetFinish(when, ticket, work);
  const reference =
    references.find(({ id }) => id === referenceId) ?? references.find(({ finish }) => finish === wanted) ?? references[0] ?? null;
  const of = (place: Place) => readAt(now, place);
  const at = draft.place ?? asked ?? firstUnread(of) ?? "grip";
  const also = [TRACK, OFF_TRACK].filter((place): place is Place => place === at || of(place as Place) !== null);
  const { cover, diameterIn } = benchBallOf(ball);
  const lastAbrasive = work?.surface.findLast(({ kind }) => kind !== "polish")?.abrasive ?? null;
  const judged =
    how === "tester"
      ? judgedByTester(of, { cover, diameterIn, wanted: wanted ?? "", lastAbrasive })
      : judgedBySheen(of, reference?.finish === wanted ? wanted : null);
  const write = (rows: readonly ReadingWritten[]) => {
    for (const body of rows)
      outbox.add({ key: newKey(), path: "/api/readings", body, what: MEASURE.reading(ball.name, PLACE_LABELS[body.place as Place]) });
  };
  const belongs = () => ({ ballId: ball.id, ticketId: ticket?.id ?? null, when, at: new Date().toISOString(), place: at });
  const goOn = (isRead: boolean) =>
    setDraft((old) => ({ ...old, place: nextAfter(at, (place) => of(place) !== null || (isRead && place === at)), typed: "" }));
  const canGo = (one: ReadingHere) => one.createdAt !== null || waiting.some(({ key }) => key === one.id);
  const newest = lastGo(now);
  const here = now.filter(({ place }) => place === at);
  return {
    when,
    how,
    at,
    typed: draft.typed,
    places: [...READ_ORDER, ...also],
    judged,
    reference,
    undo: newest.every(canGo) ? newest : [],
    areWaiting: waiting.some(({ path, refused }) => path === "/api/readings" && refused === null),
    here: here.every(canGo) ? here : [],
    all,
    readAt: of,
    readBefore: (place) => readAt(before, place),
    set: (change) => setDraft((old) => ({ ...old, ...change })),
    setHow(chosen) {
      setUsualHow(chosen);
      setDraft((old) => ({ ...old, how: chosen }));
    },
    setReference,
    saveTester(um) {
      write(testerRows(um, belongs()));
      goOn(um.length > 0);
    },
    saveSheen(comparison) {
      write([sheenRow(comparison, reference?.id ?? null, belongs())]);
      goOn(true);
    },
    takeBack(readings) {
      for (const { id, ticketId, when, place, how } of readings)
        void outbox.takeOut(id).then((takesBack) => {
          if (takesBack !== null) write([{ ballId: ball.id, ticketId, at: new Date().toISOString(), when, place, how, takesBack }]);
        });
      const [place] = readings.map((one) => one.place as Place);
      // What stays may have been taken otherwise: the room stays as it is.
      setDraft((old) => ({ ...old, when, how, place: place ?? old.place, typed: "" }));
    },
  };
}

function firstUnread(of: (place: Place) => Read | null): Place | null {
  return READ_ORDER.find((side) => of(side) === null) ?? null;
}

/** The next side that was not read, going round; where all were, the next one. Off the sides it stays. */
function nextAfter(at: Place, isRead: (place: Place) => boolean): Place {
  const i = READ_ORDER.indexOf(at as SideId);
  if (i === -1) return READ_ORDER.find((side) => !isRead(side)) ?? at;
  const round = [...READ_ORDER.slice(i + 1), ...READ_ORDER.slice(0, i + 1)];
  return round.find((side) => !isRead(side)) ?? at;
}

/** What is being entered, kept through a reload. Where nothing was typed the room opens with the last readings, not with what was looked at before it was left. */
function useDraft(id: string): [Draft, (change: (old: Draft) => Draft) => void] {
  const [kept, setKept] = useKept<Draft>(`gritwright.measuring.${id}`, () => NOTHING);
  const [isOpened, setOpened] = useState(kept.typed === "");
  const set = (change: (old: Draft) => Draft) => {
    setOpened(false);
    setKept((old) => change(isOpened ? NOTHING : old));
  };
  return [isOpened ? NOTHING : kept, set];
}

/** After the work as soon as any of it was signed, else as what was read last; of a ball that is in for no work, between visits. */
function usualWhen(ticket: Ticket | null, work: Work<SignedEntry> | null, last: ReadingHere | null): Reading["when"] {
  if (ticket === null) return "between";
  const worked = work?.surface.at(-1)?.at ?? null;
  if (last !== null && (worked === null || last.at > worked)) return last.when;
  return worked === null ? "before" : "after";
}
