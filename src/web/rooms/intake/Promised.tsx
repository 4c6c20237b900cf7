import { dayIn } from "#contract/records/dayIn";
import { INTAKE } from "#words/en/rooms/intake";
import { PROMISE } from "#words/en/rooms/promise";
import { fixed, LANGUAGE } from "#words/figures";
import { PromiseFields } from "../../pieces/PromiseFields.tsx";
import type { usePromise } from "../../shop/usePromise.ts";
import { useSettings, useShopTimes } from "../../shop/zone.ts";
import type { VisitDraft } from "./visitDraft.ts";

interface PromisedProps {
  readonly draft: VisitDraft;
  readonly at: string;
  readonly reckoned: ReturnType<typeof usePromise>;
  readonly tried: boolean;
  onChange(next: (old: VisitDraft) => VisitDraft): void;
}

/** When it is promised for, what that comes from, and another time where there is a reason for one. */
export function Promised({ draft, at, reckoned, tried, onChange }: PromisedProps) {
  const shown = useCounterTime();
  const { waiting, freeFrom, restHours, isUsual } = reckoned;
  const isOther = draft.promisedFor !== null;
  const toggle = () => onChange((old) => ({ ...old, promisedFor: isOther ? null : at }));
  return (
    <div className="promised">
      <span className="promised-name">{INTAKE.promise}</span>
      <button
        type="button"
        className="promised-time"
        aria-expanded={isOther}
        aria-label={`${INTAKE.promise} ${shown(at)}. ${PROMISE.other}`}
        onClick={toggle}
      >
        {shown(at)} <span aria-hidden="true">▾</span>
      </button>
      <p className={isOther && at < reckoned.at ? "bench-load late" : "bench-load"}>
        {isOther && at < reckoned.at ? INTAKE.benchFull(shown(freeFrom)) : INTAKE.benchFree(shown(freeFrom), waiting)}
        {restHours > 0 && ` ${INTAKE.rests(fixed(restHours, 0))}`}
      </p>
      {isUsual && <p className="note">{PROMISE.usualHours}</p>}
      {isOther && (
        <>
          <PromiseFields
            at={at}
            why={draft.promiseWhy ?? ""}
            tried={tried}
            onChange={(change) =>
              onChange((old) => ({ ...old, promisedFor: change.at ?? old.promisedFor, promiseWhy: change.why ?? old.promiseWhy ?? "" }))
            }
          />
          <button type="button" className="link-button" onClick={toggle}>
            {PROMISE.asReckoned}
          </button>
        </>
      )}
    </div>
  );
}

/** A moment as it is said across the counter: the time alone where it is today. */
export function useCounterTime(): (instant: string) => string {
  const zone = useSettings().data?.zone ?? "UTC";
  const times = useShopTimes();
  const clock = new Intl.DateTimeFormat(LANGUAGE, { timeZone: zone, hour: "numeric", minute: "2-digit" });
  const today = dayIn(zone, new Date().toISOString());
  return (instant) => (dayIn(zone, instant) === today ? INTAKE.today(clock.format(new Date(instant))) : times.at(instant));
}
