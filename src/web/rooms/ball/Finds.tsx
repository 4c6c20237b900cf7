import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import { BALL_LOG } from "#words/en/rooms/ball";
import { LineField, WordField } from "../../pieces/PlainFields.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { For } from "../../shop/useSession.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

type Find = Ball["found"][number];
type What = Find["what"];

/** What was found on the ball and is still there: cracks, plugs, flat spots. Mended or looked at, it is taken off, and put back if that was a mistake. */
export function Finds({ ball }: { readonly ball: Ball }) {
  const times = useShopTimes();
  const [gone, setGone] = useState<Find | null>(null);
  const [what, setWhat] = useState<What>("crack");
  const [note, setNote] = useState("");
  const write = useWrite(
    (found: readonly Find[]) =>
      answered(shop.balls[":id"].$patch({ param: { id: ball.id }, json: { found: [...found] }, header: madeOn(ball) })),
    ["balls"],
  );
  const takeOff = (find: Find) =>
    write.mutate(
      ball.found.filter((one) => one !== find),
      { onSuccess: () => setGone(find) },
    );
  const add = (find: Find, then: () => void) => write.mutate([...ball.found, find], { onSuccess: then });
  return (
    <section className="plate">
      <h2>{BALL_LOG.foundOn}</h2>
      {ball.found.length === 0 && <p className="nothing">{BALL_LOG.nothingFound}</p>}
      <ul className="plain-links due-list">
        {ball.found.map((find) => (
          <li key={`${find.at} ${find.what} ${find.note}`}>
            {times.day(find.at)}: {BALL_LOG.finds[find.what]} {find.note}{" "}
            <For least="counter">
              <button
                type="button"
                className="button"
                aria-label={BALL_LOG.noLongerOf(BALL_LOG.finds[find.what])}
                disabled={write.isPending}
                onClick={() => takeOff(find)}
              >
                {BALL_LOG.noLonger}
              </button>
            </For>
          </li>
        ))}
      </ul>
      {gone !== null && (
        <p role="status">
          {BALL_LOG.takenOff(BALL_LOG.finds[gone.what])}{" "}
          <button type="button" className="button" disabled={write.isPending} onClick={() => add(gone, () => setGone(null))}>
            {BALL_LOG.undo}
          </button>
        </p>
      )}
      <For least="counter">
        <form
          className="no-print"
          onSubmit={(event) => {
            event.preventDefault();
            add({ at: new Date().toISOString(), what, note: note.trim() }, () => setNote(""));
          }}
        >
          <div className="field-row">
            <WordField label={BALL_LOG.addFind} value={what} words={BALL_LOG.finds} onChange={(word) => setWhat(word as What)} />
            <LineField label={BALL_LOG.findNote} value={note} onChange={setNote} />
          </div>
          <button type="submit" className="button" disabled={write.isPending}>
            {BALL_LOG.keepFind}
          </button>
        </form>
      </For>
      <WriteFault error={write.error} />
    </section>
  );
}
