import type { World } from "./world.ts";

/** On a terminal one line that renews itself and is gone at the end; into a file one line a stage. @param words what each stage is called */
export function progressOn<Stage extends string>(
  world: World,
  words: Readonly<Record<Stage, string>>,
): (progress: { readonly stage: Stage; readonly done: number; readonly of: number }) => void {
  let last = "";
  return ({ stage, done, of }) => {
    const line = world.isTerminal ? `\r\x1b[K${done} of ${of}: ${words[stage]}` : `${words[stage]}\n`;
    if (line === last) return;
    last = line;
    world.tell(world.isTerminal && done === of ? "\r\x1b[K" : line);
  };
}
