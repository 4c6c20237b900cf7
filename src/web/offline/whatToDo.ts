/** Where an answer comes from: the page, one of its files, the shop or what it last said, the network alone; `forget`: the network, and what was read goes. */
export type AnswerFrom = "page" | "file" | "read" | "network" | "forget";

/** Streams, files and long work mean something only now. */
const ONLY_NOW = [
  /\/events$/,
  /\/bytes$/,
  /^\/api\/health$/,
  /^\/api\/backups/,
  /^\/api\/export$/,
  /^\/api\/plans/,
  /^\/api\/session/,
  /^\/api\/sign-ins$/,
];
const PERSONAL = /^\/api\/bowlers\/[^/]+\/personal-data$/;

/** Signing out, and somebody else taking over. Who signs in may be the same person as before; the page looks. */
const LEAVING = new Set(["DELETE /api/session", "POST /api/session/person"]);

/** @param path of the address, without what is asked */
export function answerFrom(method: string, path: string, isNavigation: boolean): AnswerFrom {
  if (method === "DELETE" && PERSONAL.test(path)) return "forget";
  if (LEAVING.has(`${method} ${path}`)) return "forget";
  if (method !== "GET") return "network";
  if (path.startsWith("/api/")) return ONLY_NOW.some((pattern) => pattern.test(path)) ? "network" : "read";
  if (isNavigation) return "page";
  return "file";
}
