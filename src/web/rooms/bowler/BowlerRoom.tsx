import { useEffect, useState } from "react";
import { Link } from "wouter";
import type { Bowler } from "#contract/records/bowler";
import { BOWLER } from "#words/en/rooms/bowler";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes } from "../../shop/zone.ts";
import { Bag } from "./Bag.tsx";
import { Contacts } from "./Contacts.tsx";
import { Deliveries } from "./Deliveries.tsx";
import { PersonalData } from "./PersonalData.tsx";
import { Prepaid } from "./Prepaid.tsx";
import { SpreadAndPap } from "./SpreadAndPap.tsx";
import { type OlderCopy, StillIn } from "./StillIn.tsx";
import { Visits } from "./Visits.tsx";

/** One customer: how the ball is delivered, what is in the bag, when they came, and what is kept of them. */
export function BowlerRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const bowler = useRead(["bowlers", params.id], () => answered(shop.bowlers[":id"].$get({ param: { id: params.id } })));
  useEffect(() => {
    document.title = bowler.data === undefined ? BOWLER.title : nameOf(bowler.data);
  }, [bowler.data]);
  return (
    <main id="answer" className="room bowler" tabIndex={-1}>
      <Reading of={bowler}>{(read) => <WholeBowler key={read.id} bowler={read} />}</Reading>
    </main>
  );
}

function nameOf({ name, erasedAt }: Bowler): string {
  return erasedAt === null ? name : BOWLER.erasedName;
}

function WholeBowler({ bowler }: { readonly bowler: Bowler }) {
  const times = useShopTimes();
  const { erasedAt } = bowler;
  const [stillIn, setStillIn] = useState<readonly OlderCopy[] | null>(null);
  return (
    <>
      <div className="room-head">
        <h1>{nameOf(bowler)}</h1>
        <For least="counter">
          <Link href={erasedAt === null ? `/intake?bowler=${bowler.id}` : "/intake"} className="button">
            {BOWLER.takeIn}
          </Link>
        </For>
      </div>
      {erasedAt !== null && <p className="nothing">{BOWLER.erased(times.day(erasedAt))}</p>}
      {stillIn !== null && <StillIn copies={stillIn} />}
      <div className="room-columns">
        <div>
          {erasedAt === null && <Deliveries bowler={bowler} />}
          <Bag bowlerId={bowler.id} />
          <For least="counter">
            <Visits bowlerId={bowler.id} />
          </For>
        </div>
        {erasedAt === null && (
          <div>
            <Contacts bowler={bowler} />
            <SpreadAndPap bowler={bowler} />
            <For least="counter">
              <Prepaid bowlerId={bowler.id} />
            </For>
            <For least="owner">
              <PersonalData bowler={bowler} onErased={setStillIn} />
            </For>
          </div>
        )}
      </div>
    </>
  );
}
