import { setImmediate as nextTurn } from "node:timers/promises";

/** So many rows are worked on before others are served: a few milliseconds. */
const AT_ONCE = 200;

/** Portions of a long list; before each but the first, whatever else the program has to do is done. */
export async function* portionsOf<Item>(items: readonly Item[], atOnce = AT_ONCE): AsyncGenerator<readonly Item[]> {
  for (let from = 0; from < items.length; from += atOnce) {
    if (from > 0) await nextTurn();
    yield items.slice(from, from + atOnce);
  }
}

/** What each of a long list becomes. */
export async function eachOf<Item, Made>(items: readonly Item[], make: (item: Item, index: number) => Made): Promise<Made[]> {
  const made: Made[] = [];
  for await (const portion of portionsOf(items)) for (const item of portion) made.push(make(item, made.length));
  return made;
}
