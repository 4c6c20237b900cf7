import { RecordsFault } from "#contract/records/fault";

/** Stands for a name that cannot be read. */
export const UNREADABLE_NAME = "?";

/** The name of a ball or bowler. One that cannot be read must not hide the work that waits, or the money. */
export async function nameOf(things: { get(id: string): Promise<{ readonly name: string }> }, id: string): Promise<string> {
  try {
    return (await things.get(id)).name;
  } catch (fault) {
    if (fault instanceof RecordsFault && fault.kind === "unreadable") return UNREADABLE_NAME;
    throw fault;
  }
}
