import { useQueryClient } from "@tanstack/react-query";
import { type KeyboardEvent, useEffect, useId, useRef, useState } from "react";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import { INTAKE } from "#words/en/rooms/intake";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { Hits } from "./Hits.tsx";
import { type Hit, hitsOf, LEAST_LETTERS, ticketOfCode } from "./hit.ts";

interface CounterFieldProps {
  onBowler(bowler: Bowler): void;
  onBall(ball: Ball): void;
  /** Nobody known: what was typed says who, or which number. */
  onNew(typed: string): void;
  /** Enter with nothing left to look up. */
  onGoOn(): void;
}

/** The one field of the counter: a scanner types into it. Enter takes a single hit, arrows choose among several, without any it is somebody new. */
export function CounterField({ onBowler, onBall, onNew, onGoOn }: CounterFieldProps) {
  const [text, setText] = useState("");
  const [taken, setTaken] = useState("");
  const [at, setAt] = useState(-1);
  const input = useFocusOnArrival();
  const id = useId();
  const find = useFind();
  const asked = text.trim();
  const isAsking = asked.length >= LEAST_LETTERS && asked !== taken;
  const found = useRead(["search", asked], () => search(asked), { enabled: isAsking });
  const hits = isAsking && found.data !== undefined ? hitsOf(found.data, asked) : [];
  const take = (act: () => void) => {
    act();
    setTaken(asked);
    setAt(-1);
    // The next number that is scanned takes the place of this one.
    input.current?.select();
  };
  const choose = (hit: Hit) => take(() => (hit.kind === "ball" ? onBall(hit.ball) : onBowler(hit.bowler)));
  const enter = async () => {
    if (!isAsking) return onGoOn();
    // Quicker than the answer: a scanner sends Enter with the last figure.
    const now = await find(asked);
    if (now === null || now.length === 0) return take(() => onNew(asked));
    const hit = now.length === 1 ? now[0] : now[at];
    if (hit === undefined) setAt(0);
    else choose(hit);
  };
  const onKey = (event: KeyboardEvent) => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (event.key === "Enter") {
      event.preventDefault();
      enter();
    } else if (step !== undefined && hits.length > 0) {
      event.preventDefault();
      setAt((old) => Math.max(0, Math.min(hits.length - 1, old + step)));
    }
  };
  return (
    <div className="counter-field">
      <input
        ref={input}
        type="search"
        role="combobox"
        aria-label={INTAKE.find}
        placeholder={INTAKE.find}
        autoComplete="off"
        aria-expanded={hits.length > 0}
        aria-controls={`${id}-hits`}
        aria-activedescendant={at >= 0 && at < hits.length ? `${id}-${at}` : undefined}
        value={text}
        onChange={({ target }) => {
          setText(target.value);
          setAt(-1);
        }}
        onKeyDown={onKey}
      />
      <Hits id={id} hits={hits} at={at} onChoose={choose} />
      {isAsking && hits.length === 0 && (
        <p role="status" className="no-hit">
          {found.isError ? INTAKE.away : found.data === undefined ? INTAKE.looking : INTAKE.noneFound}
        </p>
      )}
    </div>
  );
}

function search(words: string) {
  return answered(shop.search.$get({ query: { words } }));
}

/** What is found now, whether or not it was asked for before; null where the shop does not answer. A code of a ticket is the ball of that ticket. */
function useFind(): (asked: string) => Promise<readonly Hit[] | null> {
  const client = useQueryClient();
  return async (asked) => {
    const ticketId = ticketOfCode(asked);
    if (ticketId !== null) return ballOfTicket(ticketId).catch(() => null);
    const found = await client.fetchQuery({ queryKey: ["search", asked], queryFn: () => search(asked) }).catch(() => null);
    return found === null ? null : hitsOf(found, asked);
  };
}

async function ballOfTicket(id: string): Promise<readonly Hit[]> {
  const { ballId } = await answered(shop.tickets[":id"].$get({ param: { id } }));
  return [{ kind: "ball", ball: await answered(shop.balls[":id"].$get({ param: { id: ballId } })) }];
}

function useFocusOnArrival() {
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.focus({ preventScroll: true }), []);
  return input;
}
