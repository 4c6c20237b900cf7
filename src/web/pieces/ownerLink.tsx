import type { ReactNode } from "react";
import { Link } from "wouter";

/** The name of whoever something belongs to, leading to what is kept of them. @param none said where it is nobody's */
export function ownerLink(bowler: { readonly id: string; readonly name: string } | null, none: string): ReactNode {
  return bowler === null ? none : <Link href={`/bowlers/${bowler.id}`}>{bowler.name}</Link>;
}
