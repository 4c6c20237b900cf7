import { useState } from "react";
import type { Prepaid as Entry } from "#contract/records/money";
import { BOWLER } from "#words/en/rooms/bowler";
import { signed } from "#words/figures";
import { LineField } from "../../pieces/PlainFields.tsx";
import { everyPage } from "../../shop/everyPage.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useOnce } from "../../shop/useOnce.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

const MOST = 100;

/** Refreshes bought ahead and used up; what is left is their sum, and never below nought. */
export function Prepaid({ bowlerId }: { readonly bowlerId: string }) {
  const [typed, setTyped] = useState("1");
  const [once, renew] = useOnce();
  const entries = useRead(["prepaid", bowlerId], () =>
    everyPage((after) => answered(shop.prepaid.$get({ query: { bowlerId, limit: "200", ...after } }))),
  );
  const write = useWrite(
    (change: number) => answered(shop.prepaid.$post({ json: { bowlerId, at: once.at, change }, header: once.headers })),
    ["prepaid"],
  );
  const count = /^\d+$/.test(typed.trim()) ? Number(typed) : 0;
  const fits = count >= 1 && count <= MOST;
  // What was refused is over; what had no answer may have been kept, and is asked for again as the same.
  const keep = (change: number) => write.mutate(change, { onSuccess: renew, onError: ({ problem }) => problem !== null && renew() });
  return (
    <section className="plate">
      <h2>{BOWLER.prepaid}</h2>
      <Reading of={entries} isEmpty={(all) => all.length === 0} empty={BOWLER.prepaidNone}>
        {(all) => <Left entries={all} />}
      </Reading>
      <LineField
        label={BOWLER.prepaidCount}
        inputMode="numeric"
        value={typed}
        problem={fits ? undefined : BOWLER.prepaidAllowed}
        onChange={setTyped}
      />
      <div className="buttons">
        <button type="button" className="button" disabled={!fits || write.isPending} onClick={() => keep(count)}>
          {BOWLER.prepaidBought}
        </button>
        <button type="button" className="button" disabled={!fits || write.isPending} onClick={() => keep(-count)}>
          {BOWLER.prepaidUsed}
        </button>
      </div>
      <WriteFault error={write.error} />
    </section>
  );
}

const LATEST = 6;

function Left({ entries }: { readonly entries: readonly Entry[] }) {
  const times = useShopTimes();
  const newestFirst = entries.toSorted((a, b) => b.at.localeCompare(a.at));
  return (
    <>
      <p>
        <strong>{BOWLER.prepaidLeft(entries.reduce((sum, { change }) => sum + change, 0))}</strong>
      </p>
      <ol className="ball-log">
        {newestFirst.slice(0, LATEST).map(({ id, at, change }) => (
          <li key={id}>
            <time dateTime={at}>{times.day(at)}</time> <span>{BOWLER.prepaidEntry(signed(change, 0))}</span>
          </li>
        ))}
      </ol>
    </>
  );
}
