import { NUMBERED_IDS, type NumberedId } from "#engine/surface/abrasives";

/** Names of the abrasives that are called by a number: a new number is in the registry and needs no word. @param pad, paper how a language calls one */
export function numberedNames(pad: (number: string) => string, paper: (number: string) => string): Readonly<Record<NumberedId, string>> {
  const nameOf = (id: NumberedId) => (id.startsWith("pad-") ? pad(id.slice("pad-".length)) : paper(id.slice("paper-".length)));
  return Object.fromEntries(NUMBERED_IDS.map((id) => [id, nameOf(id)])) as Record<NumberedId, string>;
}
