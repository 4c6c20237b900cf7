import { useState } from "react";
import type { SignedEntry } from "#contract/records/ticketWork";
import { TICKET } from "#words/en/rooms/ticket";
import type { OnTheBench } from "../../benchWork/onTheBench.ts";
import { LineField } from "../../pieces/PlainFields.tsx";
import { For } from "../../shop/useDoor.tsx";
import { useSign } from "../bench/useSign.ts";

/** A signature is taken back with a reason, which stays in the log. */
export function TakeBack({ here, entry }: { readonly here: OnTheBench; readonly entry: SignedEntry }) {
  const [isOpen, setOpen] = useState(false);
  const [why, setWhy] = useState("");
  const sign = useSign();
  return (
    <For least="technician">
      {isOpen ? (
        <form
          className="take-back no-print"
          onSubmit={(event) => {
            event.preventDefault();
            if (why.trim() === "") return;
            sign.takeBack(here, entry, why.trim());
            setOpen(false);
          }}
        >
          <LineField label={TICKET.takeBackWhy} value={why} onChange={setWhy} />
          <button type="submit" className="button" disabled={why.trim() === ""}>
            {TICKET.takeBack}
          </button>
        </form>
      ) : (
        <button type="button" className="link no-print" onClick={() => setOpen(true)}>
          {TICKET.takeBack}
        </button>
      )}
    </For>
  );
}
