import { joined, latinOf, viewOf } from "./joined.ts";

/*
 * Colour profiles after ICC.1:2022. A profile is put together anew from the numbers that colours are made of: everything else in one (its name, whose
 * device, when, notes, tags of programs) may tell of a person.
 */

const HEADER = 128;
const TAG = 12;
/** More than the tags that are kept, and less than makes a search long. */
const MOST_TAGS = 100;
const RGB = ["rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"];
const NEEDED: Readonly<Record<string, readonly string[]>> = { "RGB ": RGB, GRAY: ["kTRC"] };
const ALSO = ["wtpt", "bkpt", "chad", "lumi"];
const CLASSES = ["mntr", "scnr", "prtr", "spac"];
/** How many numbers a parametric curve has, by its function (table 68). */
const PARAMETERS = [1, 3, 4, 5, 7];
/** D50, the only illuminant of the connection space (7.2.16). */
const D50 = [0x0000f6d6, 0x00010000, 0x0000d32d];
const NAME = "Colors";

/** The profile without words, times and devices; null where it is none, or makes colours by tables, which could hold anything. */
export function plainProfile(profile: Uint8Array): Uint8Array | null {
  if (profile.length < HEADER + 4 || latinOf(profile.subarray(36, 40)) !== "acsp") return null;
  const [kind, space] = [latinOf(profile.subarray(12, 16)), latinOf(profile.subarray(16, 20))];
  const needed = Object.hasOwn(NEEDED, space) ? NEEDED[space] : null;
  if (needed === null || !CLASSES.includes(kind)) return null;
  const given = tagsOf(profile);
  if (given === null || !needed.every((name) => given.has(name))) return null;
  const kept: [string, Uint8Array][] = [];
  for (const name of [...needed, ...ALSO]) {
    const element = given.get(name);
    if (element === undefined) continue;
    const exact = exactly(element);
    if (exact === null) return null;
    kept.push([name, exact]);
  }
  const isNew = profile[8] >= 4;
  return put(profile, [["desc", described(isNew)], ["cprt", isNew ? multiLingual() : plainText()], ...kept]);
}

function tagsOf(profile: Uint8Array): Map<string, Uint8Array> | null {
  const view = viewOf(profile);
  const count = view.getUint32(HEADER);
  if (count > MOST_TAGS || HEADER + 4 + count * TAG > profile.length) return null;
  const tags = new Map<string, Uint8Array>();
  for (let i = 0; i < count; i += 1) {
    const at = HEADER + 4 + i * TAG;
    const [offset, size] = [view.getUint32(at + 4), view.getUint32(at + 8)];
    if (offset + size > profile.length) return null;
    tags.set(latinOf(profile.subarray(at, at + 4)), profile.subarray(offset, offset + size));
  }
  return tags;
}

/** The element up to where its own numbers end; null for one of another kind. */
function exactly(element: Uint8Array): Uint8Array | null {
  if (element.length < 12) return null;
  const view = viewOf(element);
  const sizes: Readonly<Record<string, () => number>> = {
    "XYZ ": () => 20,
    sf32: () => 44,
    curv: () => 12 + 2 * view.getUint32(8),
    para: () => 12 + 4 * (PARAMETERS[view.getUint16(8)] ?? Number.NaN),
  };
  const type = latinOf(element.subarray(0, 4));
  const size = Object.hasOwn(sizes, type) ? sizes[type]() : Number.NaN;
  if (!(size <= element.length)) return null;
  const exact = element.slice(0, size);
  // Reserved bytes are nought.
  exact.fill(0, 4, 8);
  if (type === "para") exact.fill(0, 10, 12);
  return exact;
}

function described(isNew: boolean): Uint8Array {
  if (isNew) return multiLingual();
  // textDescriptionType of version 2: the name in ASCII; none in Unicode and for Macintosh.
  const element = new Uint8Array(12 + NAME.length + 1 + 8 + 3 + 67);
  element.set(latin("desc"));
  viewOf(element).setUint32(8, NAME.length + 1);
  element.set(latin(NAME), 12);
  return element;
}

function plainText(): Uint8Array {
  return joined([latin("text"), new Uint8Array(4), latin(`${NAME}\0`)]);
}

function multiLingual(): Uint8Array {
  const element = new Uint8Array(28 + 2 * NAME.length);
  const view = viewOf(element);
  element.set(latin("mluc"));
  view.setUint32(8, 1);
  view.setUint32(12, 12);
  element.set(latin("enUS"), 16);
  view.setUint32(20, 2 * NAME.length);
  view.setUint32(24, 28);
  for (const [i, letter] of [...NAME].entries()) view.setUint16(28 + 2 * i, letter.charCodeAt(0));
  return element;
}

/** A profile of these elements, with of the old header only what colours depend on. */
function put(old: Uint8Array, elements: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const table = new Uint8Array(4 + elements.length * TAG);
  const tableView = viewOf(table);
  tableView.setUint32(0, elements.length);
  const pieces: Uint8Array[] = [];
  let at = HEADER + table.length;
  for (const [i, [name, element]] of elements.entries()) {
    table.set(latin(name), 4 + i * TAG);
    tableView.setUint32(8 + i * TAG, at);
    tableView.setUint32(12 + i * TAG, element.length);
    const padding = new Uint8Array((4 - (element.length % 4)) % 4);
    pieces.push(element, padding);
    at += element.length + padding.length;
  }
  const header = new Uint8Array(HEADER);
  const view = viewOf(header);
  view.setUint32(0, at);
  // Version, class, space, connection space.
  header.set(old.subarray(8, 24), 8);
  header.fill(0, 10, 12);
  // A time is asked for; it is the same in all.
  for (const [i, number] of [2000, 1, 1].entries()) view.setUint16(24 + 2 * i, number);
  header.set(latin("acsp"), 36);
  view.setUint32(64, viewOf(old).getUint32(64) & 3);
  for (const [i, number] of D50.entries()) view.setUint32(68 + 4 * i, number);
  return joined([header, table, ...pieces]);
}

function latin(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
