import { RecordsFault } from "#contract/records/fault";

/** Schema of a PostgreSQL database in which everything of ours lies. */
export const SCHEMA = "gritwright";

const ALLOWED = "postgres://USER@HOST:PORT/DATABASE";
const PROTOCOLS = new Set(["postgres:", "postgresql:"]);

/** Whether a word means a PostgreSQL database, and no folder. */
export function isAddress(word: string): boolean {
  return /^postgres(?:ql)?:\/\//.test(word);
}

/**
 * The address with the schema that its connections look into.
 *
 * @throws {RecordsFault} `refused` where it is no address of a PostgreSQL; what was written is not repeated, it may hold a password
 */
export function addressIn(address: string, schema: string): string {
  const url = URL.canParse(address) ? new URL(address) : null;
  if (url === null || !PROTOCOLS.has(url.protocol))
    throw new RecordsFault("refused", "database", { problems: [{ path: "database", value: withoutPassword(address), allowed: ALLOWED }] });
  const options = url.searchParams.get("options") ?? "";
  url.searchParams.set("options", `${options} -c search_path=${schema}`.trim());
  return url.href;
}

/** A text without the passwords of the addresses in it: what is logged, shown or kept of them. */
export function withoutPassword(text: string): string {
  return text.replace(/(\w+:\/\/[^:@/\s"]*):[^\s"]*@/g, "$1:…@").replace(/([?&](?:ssl)?password=)[^&\s"]*/g, "$1…");
}
