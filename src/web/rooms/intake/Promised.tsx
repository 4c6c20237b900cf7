import { INTAKE } from "#words/en/rooms/intake";
import { PROMISE } from "#words/en/rooms/promise";
import { fixed } from "#words/figures";
import { PromiseFields } from "../../pieces/PromiseFields.tsx";
import type { usePromise } from "../../shop/usePromise.ts";
import { useShopTimes } from "../../shop/zone.ts";
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
  const times = useShopTimes();
  const { waiting, ballsPerHour, restHours, isUsual } = reckoned;
  return (
    <>
      <p>
        <strong>{INTAKE.promise}</strong>
        <br />
        {times.at(at)}
      </p>
      <p className="note">
        {PROMISE.from(waiting, ballsPerHour)}
        {restHours > 0 && `, ${PROMISE.rests(fixed(restHours, 0))}`}
      </p>
      {isUsual && <p className="note">{PROMISE.usualHours}</p>}
      {draft.promisedFor === null ? (
        <button type="button" className="button" onClick={() => onChange((old) => ({ ...old, promisedFor: at }))}>
          {PROMISE.other}
        </button>
      ) : (
        <>
          <PromiseFields
            at={at}
            why={draft.promiseWhy ?? ""}
            tried={tried}
            onChange={(change) =>
              onChange((old) => ({ ...old, promisedFor: change.at ?? old.promisedFor, promiseWhy: change.why ?? old.promiseWhy ?? "" }))
            }
          />
          <div className="buttons">
            <button type="button" className="button" onClick={() => onChange((old) => ({ ...old, promisedFor: null }))}>
              {PROMISE.asReckoned}
            </button>
          </div>
        </>
      )}
    </>
  );
}
