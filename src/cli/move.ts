import { withoutPassword } from "#records/database/address";
import { moveRecords, takeBack } from "#records/move/move";
import { RECORDS } from "#words/en/records";
import type { Options } from "./options.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

const USAGE = "gritwright move --from PLACE --to PLACE, or gritwright move --take-back --from PLACE";

/** `gritwright move --from PLACE --to PLACE`: everything of every shop, checked row by row; a place is a folder or an address. */
export async function move(words: readonly string[], options: Options, world: World): Promise<ExitCode> {
  const { from, to } = options;
  if (words.length > 0 || from === null || (to === null) !== options.takeBack)
    throw usageFault(`Where from, and where to? ${USAGE}.`, USAGE, words.join(" "));
  if (to === null) {
    await takeBack(from, world);
    tell({ kind: "takenBack", from: withoutPassword(from) }, [RECORDS.takenBack(withoutPassword(from))], options, world);
    return 0;
  }
  const { counts, files, missing } = await moveRecords({ from, to, now: world.now, randomBytes: world.randomBytes, tell: progress(world) });
  const document = { kind: "moved", from: withoutPassword(from), to: withoutPassword(to), counts, files, missing };
  tell(document, [...lines(document), RECORDS.movedFrom(document.from)], options, world);
  return 0;
}

interface Moved {
  readonly to: string;
  readonly counts: Readonly<Record<string, number>> | null;
  readonly files: number;
  readonly missing: readonly string[];
}

function lines({ to, counts, files, missing }: Moved): string[] {
  if (counts === null) return [RECORDS.movedBefore(to)];
  const tables = Object.entries(counts).filter(([, rows]) => rows > 0);
  const rows = tables.reduce((sum, [, count]) => sum + count, 0);
  return [
    ...tables.map(([table, count]) => RECORDS.counted(count, table)),
    ...missing.map(RECORDS.missing),
    RECORDS.moved(rows, files, to),
  ];
}

/** A line that grows, for somebody who looks on. */
function progress(world: World): (what: string, count: number) => void {
  return (what, count) => {
    if (world.isTerminal) world.tell(`\r\u001b[K${RECORDS.carried(what, count)}`);
  };
}

function tell(document: object, text: readonly string[], { json }: Options, world: World): void {
  if (world.isTerminal) world.tell("\r\u001b[K");
  world.print(json ? `${JSON.stringify({ gritwright: 1, ...document }, null, 2)}\n` : `${text.join("\n")}\n`);
}
