import type { Context } from "hono";

/** Where there is no connection, as when a test asks in this process. */
const NO_CONNECTION = "this process";
/** Groups of an IPv6 address that name a network; the other half a machine chooses for itself, as often as it likes. */
const NETWORK_GROUPS = 4;

interface Connection {
  readonly incoming?: { readonly socket?: { readonly remoteAddress?: string | undefined } };
}

/** The network address that a request comes from; of IPv6 the network alone. Proxies are refused before, so that no header need be believed. */
export function addressOf(context: Context): string {
  const { incoming } = (context.env ?? {}) as Connection;
  return networkOf(incoming?.socket?.remoteAddress ?? NO_CONNECTION);
}

export function networkOf(address: string): string {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, "").replace(/%.*$/, "");
  if (!plain.includes(":")) return plain;
  const [before, after] = plain.split("::");
  const groups = (part: string | undefined): string[] => (part === undefined || part === "" ? [] : part.split(":"));
  const missing = after === undefined ? 0 : 8 - groups(before).length - groups(after).length;
  const all = [...groups(before), ...Array.from({ length: missing }, () => "0"), ...groups(after)];
  return `${all.slice(0, NETWORK_GROUPS).join(":")}::/64`;
}

/** Whether an address is this machine's own and nobody else reaches it (RFC 1122, 3.2.1.3; RFC 4291, 2.5.3). */
export function isLoopback(address: string): boolean {
  return address === "localhost" || address === "::1" || /^127(?:\.\d{1,3}){3}$/.test(address);
}
