import { readFileSync } from "node:fs";
import type { Records } from "#records/records";
import type { Config } from "./config/configSchema.ts";
import { isLoopback } from "./http/address.ts";
import type { Reached } from "./http/guards.ts";

/** Certificate and key, as the files hold them (PEM). */
export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}

type ReachedConfig = Pick<Config, "address" | "cert" | "key" | "names">;

/** The server does not start like this; the message says what is missing. */
export class NotSafe extends Error {
  override readonly name = "NotSafe";
}

/** How the server is reached, from its configuration. */
export function reachedOf({ address, cert, names }: ReachedConfig): Reached {
  const isOnNetwork = !isLoopback(address);
  const own = isEverywhere(address) ? [] : [hostOf(address)];
  return { isEncrypted: cert !== null, isOnNetwork, names: [...names, ...own] };
}

/**
 * The certificate to serve with; null for plain HTTP on this machine itself.
 *
 * @throws {NotSafe} where others could reach the server and nothing would keep them out, or a file cannot be read
 */
export async function certificateFor(config: ReachedConfig, records: Pick<Records, "accounts" | "people">): Promise<Certificate | null> {
  const { address, cert, key, names } = config;
  if ((cert === null) !== (key === null)) throw new NotSafe("A certificate and its key go together: give both --cert and --key.");
  if (!isLoopback(address)) {
    if (cert === null)
      throw new NotSafe(
        `On the address ${address} others reach the server: it starts there only with a certificate (--cert FILE --key FILE). docs/server.md says how to make one.`,
      );
    if (isEverywhere(address) && names.length === 0)
      throw new NotSafe(
        `On the address ${address} the server must know its names: give --name for each name or number that the shop's machines open it by.`,
      );
    if (!(await hasOwner(records)))
      throw new NotSafe(
        `On the address ${address} others reach the server: it starts there only when an owner has a password. Set one in the room Shop, on this machine, or with --set-password NAME.`,
      );
  }
  return cert === null || key === null ? null : { cert: read(cert, "certificate"), key: read(key, "key") };
}

async function hasOwner({ accounts, people }: Pick<Records, "accounts" | "people">): Promise<boolean> {
  for (const { personId, role } of await accounts.list())
    if (role === "owner" && (await people.get(personId)).state === "works here") return true;
  return false;
}

function isEverywhere(address: string): boolean {
  return address === "0.0.0.0" || address === "::";
}

/** An address as a host name has it: IPv6 in brackets. */
export function hostOf(address: string): string {
  return address.includes(":") ? `[${address}]` : address;
}

function read(path: string, what: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : String(error);
    throw new NotSafe(`The ${what} could not be read from ${path}: ${code}`);
  }
}
