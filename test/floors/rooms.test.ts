import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, it } from "vitest";

const WEB = join(import.meta.dirname, "..", "..", "src", "web");
/** Where the page goes from one room to another: by their addresses. */
const NAME_THE_ROOMS = ["App.tsx", "shell/rooms.ts"];

const files = readdirSync(WEB, { recursive: true, encoding: "utf8" })
  .map((path) => path.replaceAll("\\", "/"))
  .filter((path) => /\.tsx?$/.test(path));

/** Files of the page that a file of it imports, values and types, also when they are wanted. */
function importsOf(path: string, text: string): readonly string[] {
  const named = [...text.matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map(([, name]) => name);
  return named.map((name) => relative(WEB, join(WEB, dirname(path), name)).replaceAll("\\", "/"));
}

function roomOf(path: string): string | null {
  return /^rooms\/(\w+)\//.exec(path)?.[1] ?? null;
}

/** Imports that may not be: from room to room, and from what rooms share to a room. */
function refusedOf(path: string, text: string): readonly string[] {
  if (NAME_THE_ROOMS.includes(path)) return [];
  return importsOf(path, text)
    .filter((imported) => roomOf(imported) !== null && roomOf(imported) !== roomOf(path))
    .map((imported) => `${path} imports ${imported}`);
}

describe("rooms of the page", () => {
  it("import nothing of one another, and what they share imports no room", () => {
    expect(files.flatMap((path) => refusedOf(path, readFileSync(join(WEB, path), "utf8")))).toEqual([]);
  });

  it.each([
    ["from room to room", "rooms/print/Label.tsx", 'import { Work } from "../ticket/Work.tsx";'],
    ["a type", "rooms/ball/space/Look.tsx", 'import type { Work } from "../../ticket/Work.tsx";'],
    ["when it is wanted", "rooms/ball/BallLog.tsx", 'const later = () => import("../ticket/Work.tsx");'],
    ["from what is shared", "shop/useBalls.ts", 'import { Bag } from "../rooms/bowler/Bag.tsx";'],
  ])("%s it is refused", (_, path, text) => {
    expect(refusedOf(path, text)).toHaveLength(1);
  });

  it("their own files and what lies below are allowed", () => {
    const text = 'import { useSign } from "../../benchWork/useSign.ts";\nimport { alarm } from "./alarm.ts";';
    expect(importsOf("rooms/bench/Sign.tsx", text)).toEqual(["benchWork/useSign.ts", "rooms/bench/alarm.ts"]);
    expect(refusedOf("rooms/bench/Sign.tsx", text)).toEqual([]);
  });
});
