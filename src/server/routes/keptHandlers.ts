import type { Kept } from "#contract/records/fields";
import type { Addable, Changeable, Page, PageRequest, Removable } from "#records/records";
import type { ChangeOn, Write } from "#records/write";
import type { IdempotencyKey } from "../http/request.ts";
import { stated } from "../stated.ts";

/*
 * Handlers of what most kept things have in common. Each returns the part of a request that it needs, so that it fits every route of its kind.
 */

interface Identified {
  readonly params: { readonly id: string };
}

interface Writing {
  readonly by: string;
  readonly key: IdempotencyKey | null;
}

interface Narrowed {
  readonly query: {
    readonly limit?: number | undefined;
    readonly after?: string | undefined;
    readonly order?: PageRequest["order"] | undefined;
    readonly [field: string]: unknown;
  };
}

/** Who writes, and under which key a retry is known. */
export function writeOf({ by, key }: Writing): Write {
  return key === null ? { by } : { by, once: key };
}

export function changeOf(request: Writing & { readonly version: number }): ChangeOn {
  return { ...writeOf(request), expectedVersion: request.version };
}

/** Lists by pages; `where` takes the fields that the route's schema let through. */
export function listed<Thing, Filter>(things: { list(request: PageRequest & { readonly where?: Filter }): Promise<Page<Thing>> }) {
  return async ({ query: { limit, after, order, ...filter } }: Narrowed): Promise<{ items: Thing[]; next: string | null }> => {
    const page = await things.list({ ...stated({ limit, after, order }), where: stated(filter) as Filter });
    return { items: [...page.items], next: page.next };
  };
}

export function got<Thing extends Kept>(things: { get(id: string): Promise<Thing> }) {
  return ({ params }: Identified): Promise<Thing> => things.get(params.id);
}

export function created<Thing extends Kept, Written, Filter extends string>(things: Pick<Addable<Thing, Written, Filter>, "create">) {
  return (request: Writing & { readonly body: Written }): Promise<Thing> => things.create(request.body, writeOf(request));
}

export function changed<Thing extends Kept, Written, Filter extends string>(things: Pick<Changeable<Thing, Written, Filter>, "change">) {
  return (request: Identified & Writing & { readonly version: number; readonly body: Partial<Written> }): Promise<Thing> =>
    things.change(request.params.id, request.body, changeOf(request));
}

export function removed<Thing extends Kept, Written, Filter extends string>(things: Pick<Removable<Thing, Written, Filter>, "remove">) {
  return async (request: Identified & Writing & { readonly version: number }): Promise<undefined> => {
    await things.remove(request.params.id, changeOf(request));
  };
}
