interface Page<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}

/** A list to its end, page by page. @param ask asks for the page after a cursor; an empty one for the first */
export async function everyPage<T>(ask: (after: { readonly after?: string }) => Promise<Page<T>>): Promise<readonly T[]> {
  const all: T[] = [];
  let next: string | null = null;
  do {
    const page: Page<T> = await ask(next === null ? {} : { after: next });
    all.push(...page.items);
    next = page.next;
  } while (next !== null);
  return all;
}
