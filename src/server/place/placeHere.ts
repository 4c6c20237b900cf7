import { homedir } from "node:os";
import { OWN_ROOT } from "../program/state.ts";
import type { PlaceParts } from "./placed.ts";
import { userFolder } from "./userFolder.ts";

/** Where this user's shops lie on this machine, or may have lain. */
export function placeHere(move: () => Promise<boolean>): PlaceParts {
  return {
    users: userFolder({ platform: process.platform, environment: process.env, home: homedir() }),
    startedFrom: [process.cwd(), OWN_ROOT],
    today: new Date().toISOString().slice(0, 10),
    move,
    say: (words) => console.log(words),
  };
}
