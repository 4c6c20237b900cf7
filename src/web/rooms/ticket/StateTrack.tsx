import type { Ticket } from "#contract/records/ticket";
import type { TicketState } from "#contract/records/ticketStates";
import { TICKET } from "#words/en/rooms/ticket";
import { TICKET_STATE_WORDS } from "#words/en/rooms/today";
import { useShopTimes } from "../../shop/zone.ts";

type Stop = keyof typeof TICKET.trackStops;
const STOPS = Object.keys(TICKET.trackStops) as Stop[];
/** Where on the track a state stands that has no stop of its own; null off the track. */
const STANDS: Readonly<Record<TicketState, Stop | null>> = {
  received: "received",
  "waiting for approval": "received",
  "in work": "in work",
  drying: "drying",
  ready: "ready",
  collected: "collected",
  uncollected: "ready",
  rework: "in work",
  "warranty hold": null,
  cancelled: null,
};
/** While a ball is worked or dries the stop is where it is; else what comes next is what to do. */
const GOES_ON: readonly TicketState[] = ["in work", "drying", "rework"];

/** Five stops from check-in to pick-up: what was passed is filled, the one to do now is ringed. */
export function StateTrack({ ticket: { state, been } }: { readonly ticket: Ticket }) {
  const times = useShopTimes();
  const stop = STANDS[state];
  const at = stop === null ? -1 : STOPS.indexOf(stop);
  const now = GOES_ON.includes(state) ? at : state === "ready" || state === "uncollected" ? STOPS.indexOf("collected") : at + 1;
  const since = (one: Stop) => been.findLast((entry) => entry.state === one)?.at ?? null;
  const isOnTrack = stop === state;
  return (
    <>
      <p className={isOnTrack ? "state visually-hidden" : "state"}>
        {TICKET.state}: <strong>{TICKET_STATE_WORDS[state]}</strong>
      </p>
      <ol className="state-track" aria-label={TICKET.track}>
        {STOPS.map((one, i) => {
          const passed = since(one);
          const isPassed = stop !== null && passed !== null && (i < at || (i === at && i !== now));
          const classes = [isPassed ? "passed" : "", stop !== null && i === now ? "now" : "", i < at ? "before" : ""];
          return (
            <li key={one} className={classes.filter((name) => name !== "").join(" ")} aria-current={one === state ? "step" : undefined}>
              <span className="stop-name">{TICKET.trackStops[one]}</span>
              {isPassed && passed !== null && <span className="stop-at">{times.at(passed)}</span>}
            </li>
          );
        })}
      </ol>
    </>
  );
}
