import { recall, remember } from "../client/memory.ts";
import { newKey } from "./shopClient.ts";

const MEMORY = "gritwright.device";
let here: string | null = null;

/** A name for this browser, by which its side at the bench is told from another device's; says nothing of whose it is. */
export function thisDevice(): string {
  here ??= recall(MEMORY) ?? made();
  return here;
}

function made(): string {
  const name = newKey();
  remember(MEMORY, name);
  return name;
}
