import type { Message } from "#engine/message";
import { BAG_SENTENCES } from "./en/bag.ts";
import { CAUTION_SENTENCES } from "./en/cautions.ts";
import { DIAGNOSIS_SENTENCES } from "./en/diagnosis.ts";
import { PLAN_SENTENCES } from "./en/planMessages.ts";
import { RULE_SENTENCES } from "./en/rules.ts";
import { Params, type Sentence } from "./params.ts";

const SENTENCES: ReadonlyMap<string, Sentence> = new Map<string, Sentence>([
  ...Object.entries(PLAN_SENTENCES),
  ...Object.entries(BAG_SENTENCES),
  ...Object.entries(DIAGNOSIS_SENTENCES),
  ...Object.entries(RULE_SENTENCES).map(([id, sentence]) => [`rule.${id}`, sentence] as const),
  ...Object.entries(CAUTION_SENTENCES).map(([id, sentence]) => [`caution.${id}`, sentence] as const),
]);

/**
 * The sentence of a message of the engine.
 *
 * @throws {TypeError} if the catalogue has no sentence for it, or the message lacks a figure that its sentence needs
 */
export function messageText(message: Message): string {
  const sentence = SENTENCES.get(message.id);
  if (sentence === undefined) throw new TypeError(`no sentence for the message "${message.id}"`);
  return sentence(new Params(message));
}
