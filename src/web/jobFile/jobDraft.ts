/** A job file while it is being written: plain data, where a number that cannot be read yet still stands as the text that was typed. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };
export type JobDraft = { readonly [key: string]: Json };

/** Whether plain data can stand in the form at all: a mapping. */
export function isJobDraft(data: unknown): data is JobDraft {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

type Step = string | number;

/** `limits.laydownBoard[0]` as steps. */
function steps(path: string): Step[] {
  return path
    .split(/[.[\]]+/)
    .filter((s) => s !== "")
    .map((s) => (/^\d+$/.test(s) ? Number(s) : s));
}

/** What stands at a path, or undefined. */
export function valueAt(data: unknown, path: string): unknown {
  return steps(path).reduce<unknown>((at, key) => (typeof at === "object" && at !== null ? Reflect.get(at, key) : undefined), data);
}

/** A copy with the value put at the path; undefined takes the field out, and a mapping left empty with it. */
export function withValue(draft: JobDraft, path: string, value: Json | undefined): JobDraft {
  const written = put(draft, steps(path), value);
  return isMapping(written) ? written : {};
}

function isMapping(value: Json | undefined): value is { readonly [key: string]: Json } {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function put(at: Json | undefined, path: readonly Step[], value: Json | undefined): Json | undefined {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (typeof key === "number") {
    const list = Array.isArray(at) ? [...(at as readonly Json[])] : [];
    list[key] = put(list[key], rest, value) ?? null;
    return list;
  }
  const { [key]: old, ...others } = isMapping(at) ? at : {};
  const inner = put(old, rest, value);
  if (inner === undefined) return Object.keys(others).length === 0 ? undefined : others;
  // Keys stay in their order, so that a saved file reads like the one that was opened.
  return isMapping(at) && key in at
    ? Object.fromEntries(Object.entries(at).map(([k, v]) => [k, k === key ? inner : v]))
    : { ...others, [key]: inner };
}

/** A typed number, with point or comma; text that is none is given back as it stands, to be answered beside the field. Empty: nothing entered. */
export function readNumber(typed: string): number | string | undefined {
  const text = typed.trim().replace("−", "-").replace(",", ".");
  if (text === "") return undefined;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : typed.trim();
}
