// Built into the page's own modules in the copy, once a language, and prints the forms that offer covers and numbers, and those over what is described.
import { renderToStaticMarkup } from "react-dom/server";
import { CONTACT_FIELDS } from "#contract/records/bowlerFields";
import { BOWLER } from "#words/en/rooms/bowler";
import { describedForm } from "../../src/web/pieces/describedForm.ts";
import { EditFields } from "../../src/web/pieces/EditForm.tsx";
import { BagForm } from "../../src/web/rooms/bag/BagForm.tsx";
import { newDraft } from "../../src/web/rooms/bag/bagDraft.ts";
import { usable } from "../../src/web/rooms/bench/used.ts";
import { NewBall } from "../../src/web/rooms/intake/NewOnes.tsx";
import { currentBall, emptyVisit, withNewBall } from "../../src/web/rooms/intake/visitDraft.ts";
import { WhatIsWrong } from "../../src/web/rooms/intake/WhatIsWrong.tsx";
import type { ShopTimes } from "../../src/web/shop/zone.ts";

const ball = currentBall(withNewBall(emptyVisit()));
if (ball === null) throw new Error("a new ball is the current one");
const nothing = () => undefined;
const mph = { unit: "mph", text: String, typed: String, mph: Number };
const days = new Proxy({} as ShopTimes, { get: () => String });
const contacts = describedForm(CONTACT_FIELDS, BOWLER, mph);
/** Every described field filled in with its own name. */
const named = Object.fromEntries(Object.keys(CONTACT_FIELDS).map((key) => [key, `as ${key}`]));
const forms = {
  bag: renderToStaticMarkup(<BagForm draft={newDraft([], "2026-11-30")} balls={[]} patterns={[]} problems={[]} onChange={nothing} />),
  newBall: renderToStaticMarkup(<NewBall ball={ball} isNext={false} tried={false} onChange={nothing} />),
  wanted: renderToStaticMarkup(<WhatIsWrong ball={ball} isOneOfSeveral={false} onChange={nothing} />),
  contacts: renderToStaticMarkup(<EditFields fields={contacts.fields} typed={contacts.typedOf(named)} problems={[]} onSet={nothing} />),
  contactFacts: contacts.factsOf(named, days),
  otherPads: usable({ abrasive: null, kind: "cut" } as Parameters<typeof usable>[0]),
};
process.stdout.write(JSON.stringify(forms));
