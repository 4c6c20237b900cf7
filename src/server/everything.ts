import type { Page } from "#records/records";

/** All pages of a list, one after the other. @param page asks for the page after a cursor */
export async function everything<Thing>(page: (after: string | null) => Promise<Page<Thing>>): Promise<Thing[]> {
  const things: Thing[] = [];
  let after: string | null = null;
  do {
    const { items, next }: Page<Thing> = await page(after);
    things.push(...items);
    after = next;
  } while (after !== null);
  return things;
}
