// Built into the page's own modules in the copy, once a language, and prints the forms that offer covers and numbers.
import { renderToStaticMarkup } from "react-dom/server";
import { BagForm } from "../../src/web/rooms/bag/BagForm.tsx";
import { newDraft } from "../../src/web/rooms/bag/bagDraft.ts";
import { usable } from "../../src/web/rooms/bench/used.ts";
import { NewBall } from "../../src/web/rooms/intake/NewOnes.tsx";
import { currentBall, emptyVisit, withNewBall } from "../../src/web/rooms/intake/visitDraft.ts";
import { WhatIsWrong } from "../../src/web/rooms/intake/WhatIsWrong.tsx";

const ball = currentBall(withNewBall(emptyVisit()));
if (ball === null) throw new Error("a new ball is the current one");
const nothing = () => undefined;
const forms = {
  bag: renderToStaticMarkup(<BagForm draft={newDraft([], "2026-11-30")} balls={[]} patterns={[]} problems={[]} onChange={nothing} />),
  newBall: renderToStaticMarkup(<NewBall ball={ball} isNext={false} tried={false} onChange={nothing} />),
  wanted: renderToStaticMarkup(<WhatIsWrong ball={ball} isOneOfSeveral={false} onChange={nothing} />),
  otherPads: usable({ abrasive: null, kind: "cut" } as Parameters<typeof usable>[0]),
};
process.stdout.write(JSON.stringify(forms));
