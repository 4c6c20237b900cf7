import type { Route } from "./route.ts";

const MILLIPERCENT_OF_PERMILLE = 100;

/** A route that also takes taxes as requests gave them up to 0.1.0: `taxPermille`, in thousandths of the price. */
export function takesPermille<const R extends Route & { readonly body: { readonly kind: "json" } }>(route: R): R {
  return { ...route, body: { ...route.body, older: inMillipercent } };
}

/** Where both keys are given the older one stays, and is refused as one that is not known. */
function inMillipercent(body: unknown): unknown {
  if (typeof body !== "object" || body === null || Array.isArray(body)) return body;
  const { taxPermille, ...rest } = body as Readonly<Record<string, unknown>>;
  const whole = { ...rest, ...ofLines(rest) };
  if (taxPermille === undefined) return whole;
  if ("taxMillipercent" in rest) return { ...whole, taxPermille };
  return { ...whole, taxMillipercent: typeof taxPermille === "number" ? taxPermille * MILLIPERCENT_OF_PERMILLE : taxPermille };
}

/** Lines of a visit, and the one of work beside the lane. */
function ofLines({ charges, charge }: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return {
    ...(Array.isArray(charges) ? { charges: charges.map(inMillipercent) } : {}),
    ...(charge === undefined ? {} : { charge: inMillipercent(charge) }),
  };
}
