import type { SignedEntry } from "#contract/records/ticketWork";
import { TICKET } from "#words/en/rooms/ticket";
import { ReasonPress } from "../pieces/ReasonPress.tsx";
import { For } from "../shop/useSession.tsx";
import type { OnTheBench } from "./onTheBench.ts";
import { useSign } from "./useSign.ts";

interface TakeBackProps {
  readonly here: OnTheBench;
  readonly entry: SignedEntry;
  readonly className?: "link" | "button";
}

/** A signature is taken back with a reason, which stays in the log. */
export function TakeBack({ here, entry, className = "link" }: TakeBackProps) {
  const sign = useSign();
  return (
    <For least="technician">
      <ReasonPress
        press={TICKET.takeBack}
        label={TICKET.takeBackWhy}
        act={TICKET.takeBack}
        className={className}
        onSay={(why) => sign.takeBack(here, entry, why)}
      />
    </For>
  );
}
