import type { SignedEntry } from "#contract/records/ticketWork";
import { TICKET } from "#words/en/rooms/ticket";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { ReasonPress } from "../../pieces/ReasonPress.tsx";
import { For } from "../../shop/useDoor.tsx";
import { useSign } from "../bench/useSign.ts";

/** A signature is taken back with a reason, which stays in the log. */
export function TakeBack({ here, entry }: { readonly here: OnTheBench; readonly entry: SignedEntry }) {
  const sign = useSign();
  return (
    <For least="technician">
      <ReasonPress
        press={TICKET.takeBack}
        label={TICKET.takeBackWhy}
        act={TICKET.takeBack}
        className="link"
        onSay={(why) => sign.takeBack(here, entry, why)}
      />
    </For>
  );
}
