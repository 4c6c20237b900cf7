/** What somebody may do in the shop; each may do what those before may. */
export const ROLES = ["reader", "counter", "technician", "owner"] as const;
export type Role = (typeof ROLES)[number];

/** Who may use a route at the least; `anybody` needs no session. */
export type Least = Role | "anybody";

/** Whether somebody of a role may do what wants at least another. */
export function mayDo(has: Role, least: Least): boolean {
  return least === "anybody" || ROLES.indexOf(has) >= ROLES.indexOf(least);
}
