import { JobFault, type JobProblem, wholeFileFault } from "./problem.ts";

/** No file or request of ours is nested deeper. */
export const MOST_LEVELS = 32;
/** No mapping of ours has more keys. */
const MOST_KEYS = 1000;
/** Numbers, texts, lists and mappings, all together: a film of a whole lane has a tenth of it. */
const MOST_VALUES = 100_000;

interface Place {
  readonly value: object;
  readonly levels: number;
  readonly under: Place | null;
  readonly key: string | number;
}

/**
 * Refuses what is nested deeper, or holds more, than anything that is meant well, before it is looked at more closely: what is looked at later may
 * then take a little time for each key and call itself for each level.
 *
 * @throws {JobFault} `syntax` where it is nested too deep; `invalid` where it holds too much
 */
export function mustBeModest(data: unknown): void {
  const open: Place[] = isNested(data) ? [{ value: data, levels: 1, under: null, key: "" }] : [];
  let values = 0;
  for (let place = open.pop(); place !== undefined; place = open.pop()) {
    if (place.levels > MOST_LEVELS) throw tooDeep();
    const { value, levels } = place;
    const keys = Array.isArray(value) ? value.keys() : keysOf(value, place);
    for (const key of keys) {
      values += 1;
      if (values > MOST_VALUES) throw wholeFileFault("invalid", "tooManyValues", `at most ${MOST_VALUES} values`, { most: MOST_VALUES });
      const inner: unknown = Reflect.get(value, key);
      if (isNested(inner)) open.push({ value: inner, levels: levels + 1, under: place, key });
    }
  }
}

/** The fault of what is nested deeper than any file of ours. */
export function tooDeep(): JobFault {
  return wholeFileFault("syntax", "tooDeep", `at most ${MOST_LEVELS} levels`, { levels: MOST_LEVELS });
}

function isNested(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

/** @throws {JobFault} `invalid` where there are more than any mapping has */
function keysOf(mapping: object, place: Place): readonly string[] {
  const keys = Object.keys(mapping);
  if (keys.length <= MOST_KEYS) return keys;
  const params = { keys: keys.length, most: MOST_KEYS };
  throw new JobFault("invalid", [
    { path: pathOf(place), value: null, allowed: `at most ${MOST_KEYS} keys`, reason: { id: "tooManyKeys", params } },
  ]);
}

/** `lane.oilSheet.passes[2]`, as the way there has been noted. */
function pathOf(place: Place): string {
  const path: (string | number)[] = [];
  for (let at = place; at.under !== null; at = at.under) path.push(at.key);
  return dotted(path.reverse());
}

const LONGEST_KEY = 80;

/** `lane.oilSheet.passes[2].toFt`; of a key that is longer than any of ours only the beginning. */
export function dotted(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === "number" ? `${text}[${key}]` : text === "" ? shortened(key) : `${text}.${shortened(key)}`),
    "",
  );
}

/** The beginning of a key that is longer than any of ours. */
export function shortened(key: PropertyKey): string {
  const text = String(key);
  return text.length <= LONGEST_KEY ? text : `${text.slice(0, LONGEST_KEY)}…`;
}

/** So many problems are told: whoever has more has one mistake in all of them. */
export const MOST_PROBLEMS = 20;

/**
 * The first problems, and one more that says how many are not told.
 *
 * @param count of all there are
 */
export function firstOf(problems: readonly JobProblem[], count = problems.length): JobProblem[] {
  const first = problems.slice(0, MOST_PROBLEMS);
  const more = count - first.length;
  return more <= 0 ? first : [...first, { path: "", value: null, allowed: "", reason: { id: "more", params: { count: more } } }];
}
