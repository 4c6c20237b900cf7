import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import { BALL_LOG } from "#words/en/rooms/ball";
import { Fold } from "../../pieces/Fold.tsx";
import { LineField } from "../../pieces/PlainFields.tsx";
import { emptied } from "../../shop/emptied.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

const LEAST_LETTERS = 2;

/** The ball goes to another bowler whom the shop knows, or is nobody's; whose it was stays written down. */
export function ChangeHands({ ball }: { readonly ball: Ball }) {
  const [words, setWords] = useState("");
  const asked = words.trim();
  const found = useRead(["search", asked], () => answered(shop.search.$get({ query: { words: asked } })), {
    enabled: asked.length >= LEAST_LETTERS,
  });
  const write = useWrite(
    (bowlerId: string | null) => answered(shop.balls[":id"].$patch({ param: { id: ball.id }, json: { bowlerId }, header: madeOn(ball) })),
    ["balls", "bowlers", "search", "queue"],
  );
  const give = (bowlerId: string | null) => write.mutate(bowlerId, { onSuccess: () => setWords(emptied(words, "")) });
  return (
    <section className="plate">
      <Fold title={BALL_LOG.hands} summary="" startsOpen="never">
        <Before owners={ball.owners.filter(({ to }) => to !== null)} />
        <LineField label={BALL_LOG.handsTo} help={BALL_LOG.handsHelp} type="search" value={words} onChange={setWords} />
        {asked.length >= LEAST_LETTERS && (
          <Reading of={found} isEmpty={({ bowlers }) => bowlers.length === 0} empty={BALL_LOG.noBowler}>
            {({ bowlers }) => (
              <div className="buttons">
                {bowlers
                  .filter(({ id }) => id !== ball.bowlerId)
                  .map(({ id, name }) => (
                    <button key={id} type="button" className="button" disabled={write.isPending} onClick={() => give(id)}>
                      {BALL_LOG.nowOf(name)}
                    </button>
                  ))}
              </div>
            )}
          </Reading>
        )}
        {ball.bowlerId !== null && (
          <button type="button" className="button" disabled={write.isPending} onClick={() => give(null)}>
            {BALL_LOG.nowNobodys}
          </button>
        )}
        <WriteFault error={write.error} />
      </Fold>
    </section>
  );
}

function Before({ owners }: { readonly owners: Ball["owners"] }) {
  const times = useShopTimes();
  if (owners.length === 0) return null;
  return (
    <ul>
      {owners.map(({ bowlerId, to }) => (
        <li key={`${bowlerId} ${to}`}>
          <OwnerName bowlerId={bowlerId} /> {to !== null && BALL_LOG.until(times.date(to))}
        </li>
      ))}
    </ul>
  );
}

function OwnerName({ bowlerId }: { readonly bowlerId: string }) {
  const owner = useRead(["bowlers", bowlerId], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId } })));
  return <>{owner.data?.name ?? "…"}</>;
}
