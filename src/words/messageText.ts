import type { Message } from "#engine/message";
import { CAUTION_SENTENCES } from "./en/cautions.ts";
import { PLAN_SENTENCES } from "./en/planMessages.ts";
import { RULE_SENTENCES } from "./en/rules.ts";
import { Params } from "./params.ts";

/**
 * The sentence of a message of the engine.
 *
 * @throws {TypeError} if the catalogue has no sentence for it, or the message lacks a figure that its sentence needs
 */
export function messageText(message: Message): string {
  const fixedSentence = lookUp(RULE_SENTENCES, "rule.", message.id) ?? lookUp(CAUTION_SENTENCES, "caution.", message.id);
  if (fixedSentence !== null) return fixedSentence;
  const sentence = Object.entries(PLAN_SENTENCES).find(([id]) => id === message.id)?.[1];
  if (sentence === undefined) throw new TypeError(`no sentence for the message "${message.id}"`);
  return sentence(new Params(message));
}

function lookUp(catalogue: Readonly<Record<string, string>>, prefix: string, id: string): string | null {
  if (!id.startsWith(prefix)) return null;
  const name = id.slice(prefix.length);
  return Object.hasOwn(catalogue, name) ? catalogue[name] : null;
}
