import { takeLanguage } from "virtual:catalogue";
import type { Call } from "./protocol.ts";

type Asked = MessageEvent<{ readonly number: number; readonly call: Call }>;

/** Calls that come before the worker can answer. */
const early: Asked[] = [];
const keep = (asked: Asked): void => {
  early.push(asked);
};
self.addEventListener("message", keep);

/** The engine lives here, off the thread that the page is drawn on. It speaks the language that the page gave it as a name. */
async function begin(): Promise<void> {
  await takeLanguage(self.name);
  const { answerTo } = await import("./computeAnswers.ts");
  const answer = ({ data }: Asked): void => void answerTo(data.number, data.call).then((said) => self.postMessage(said));
  self.removeEventListener("message", keep);
  self.addEventListener("message", answer);
  for (const asked of early) answer(asked);
}

// The page hears of it as of a file that did not come.
begin().catch(() => self.postMessage(null));
