import type { Records } from "#records/records";
import { withoutWords } from "./http/requestLog.ts";
import type { Log } from "./log.ts";

const LOOK_EVERY_MS = 3_600_000;
/** The first look waits until the page is up. */
const FIRST_LOOK_MS = 60_000;

/**
 * Looks every hour whether a backup is due, makes it, and takes out those that retention does not keep. A backup that fails is logged; work goes on.
 *
 * @returns stops it, and waits for a backup under way
 */
export function keepBackups({ backups }: Pick<Records, "backups">, log: Log): () => Promise<void> {
  let underWay = Promise.resolve();
  const look = (): void => {
    underWay = underWay.then(async () => {
      try {
        const { made, takenOut } = await backups.keepUp();
        if (made !== null) log("info", { event: "backup", bytes: made.bytes, takenOut: takenOut.length });
      } catch (error) {
        log("error", { event: "backup", ...withoutWords(error) });
      }
    });
  };
  const first = setTimeout(look, FIRST_LOOK_MS).unref();
  const every = setInterval(look, LOOK_EVERY_MS).unref();
  return () => {
    clearTimeout(first);
    clearInterval(every);
    return underWay;
  };
}
