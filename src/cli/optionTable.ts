/** What the options of the commands are called, in help and completion; what their values may be is checked in options.ts. */
interface OptionSaid {
  /** Stands for its value; without one it is a switch. */
  readonly value?: string;
  readonly says: string;
  /** Its value is a file or a folder. */
  readonly isPath?: true;
  /** What its value may be, where that is few words. */
  readonly words?: readonly string[];
}

export const OPTIONS = {
  json: { says: "print one document of data instead of text" },
  svg: { value: "FILE", says: "draw the picture into a file; - draws it to standard output, and the text goes beside it", isPath: true },
  seed: { value: "N", says: "draw at random from this seed instead of the file's" },
  workers: { value: "N", says: "threads to compute in" },
  worlds: { value: "N", says: "in how many worlds (64), or as many as there are" },
  at: { value: "FT,FT,…", says: "where to take samples, ft from the foul line (15,30,45,59.5,60)" },
  taps: { value: "FILE", says: "FILE is a film (ffmpeg decodes it); where the lane is in its first picture", isPath: true },
  on: { value: "DATE", says: "day of play, 2026-05-31; else the file's, else today" },
  book: { value: "ID", says: "rule book; else the file's", words: ["usbc", "world-bowling"] },
  cutoff: { value: "MM", says: "λc; else by the standard's table" },
  "short-cutoff": { value: "MM", says: "λs; else none" },
  form: { value: "WORD", says: "form that is taken out: none, line (usual) or arc", words: ["none", "line", "arc"] },
  "x-unit": { value: "WORD", says: "unit of places along, where the heading names none (usual: mm)" },
  "z-unit": { value: "WORD", says: "unit of heights, where the heading names none (usual: um)" },
  due: { says: "the daily one, where it is time; older ones are thinned out" },
  whole: { says: "one file with photos and files in it, to be kept elsewhere by itself" },
  "without-lost-files": { says: "also where photos or files of the backup are lost; names what it left out" },
  apply: { says: "write it" },
  map: { value: "COL=FIELD,…", says: "which column feeds which field; else by their names" },
  by: { value: "INITIALS", says: "who does it, where several work in the shop" },
  shop: { value: "NAME", says: "which shop, where several share a database" },
  add: { value: "NAME", says: "add a shop of this name" },
  from: { value: "PLACE", says: "a folder or an address, to be moved from", isPath: true },
  to: { value: "PLACE", says: "a folder or an address, to be moved to; called again where it was cut, it goes on", isPath: true },
  "take-back": { says: "open what was moved away (--from) again" },
} as const satisfies Record<string, OptionSaid>;

export type OptionName = keyof typeof OPTIONS;

/** Said of it, whichever it is. */
export function saidOf(name: OptionName): OptionSaid {
  return OPTIONS[name];
}
