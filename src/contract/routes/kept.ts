import type { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import type { Least } from "../records/roles.ts";
import { changesOf } from "./changes.ts";
import { idParams, pageOf, pageQuery } from "./parts.ts";
import { answers, json, NOTHING, type Route, route } from "./route.ts";

/*
 * What most kept things have in common: a list in pages, one of them, a new one, a change, taking it out again.
 * Things that are never changed, payments for instance, have fewer of these.
 */

type Path = Route["path"];

const order = oneOf(["newest first", "oldest first"], "By the time of making").optional();

/**
 * A page of a list.
 *
 * @param least who may ask, at the least
 * @param filter names of the fields that the list can be narrowed by
 */
export function listRoute<const L extends Least, const P extends Path, const S extends z.ZodType, const F extends string>(
  least: L,
  path: P,
  what: string,
  schema: S,
  filter: readonly F[],
) {
  const narrowed = Object.fromEntries(filter.map((field) => [field, text("Narrows the list").optional()])) as Record<
    F,
    z.ZodOptional<z.ZodString>
  >;
  const query = mapping({ ...pageQuery, order, ...narrowed }, "Which page of which part of the list");
  return route({ least, method: "get", path, does: `Lists ${what}`, query, answer: answers(pageOf(schema)) });
}

export function getRoute<const L extends Least, const P extends Path, const S extends z.ZodType>(
  least: L,
  path: P,
  what: string,
  schema: S,
) {
  return route({ least, method: "get", path, params: idParams, does: `Gives ${what}`, answer: answers(schema) });
}

export function createRoute<const L extends Least, const P extends Path, const W extends z.ZodType, const S extends z.ZodType>(
  least: L,
  path: P,
  what: string,
  written: W,
  schema: S,
) {
  const common = { least, method: "post", path, does: `Keeps ${what}`, body: json(written), answer: answers(schema, 201) } as const;
  return route({ ...common, key: "allowed", location: `${path}/:id` });
}

/** The same for money and what is as good as money: never twice. */
export function createOnceRoute<const L extends Least, const P extends Path, const W extends z.ZodType, const S extends z.ZodType>(
  least: L,
  path: P,
  what: string,
  written: W,
  schema: S,
) {
  return route({ ...createRoute(least, path, what, written, schema), key: "required" });
}

/** Sets the fields that are given, over the version that was seen. */
export function changeRoute<const L extends Least, const P extends Path, const W extends z.ZodObject, const S extends z.ZodType>(
  least: L,
  path: P,
  what: string,
  written: W,
  schema: S,
) {
  const body = json(changesOf(written));
  return route({
    least,
    method: "patch",
    path,
    params: idParams,
    does: `Changes the given fields of ${what}`,
    body,
    answer: answers(schema),
    match: true,
    key: "allowed",
  });
}

export function removeRoute<const L extends Least, const P extends Path>(least: L, path: P, what: string) {
  return route({
    least,
    method: "delete",
    path,
    params: idParams,
    does: `Takes out ${what}, where nothing hangs on it`,
    answer: NOTHING,
    match: true,
    key: "allowed",
  });
}
