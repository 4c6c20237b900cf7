import { zipSync } from "fflate";
import type { customerRoutes } from "#contract/routes/customers";
import type { Records } from "#records/records";
import type { Handlers } from "../http/mount.ts";
import { changed, created, got, listed, writeOf } from "./keptHandlers.ts";

export function customerHandlers({ people, bowlers, personal }: Records): Handlers<typeof customerRoutes> {
  return {
    listPeople: listed(people),
    getPerson: got(people),
    createPerson: created(people),
    changePerson: changed(people),

    listBowlers: listed(bowlers),
    getBowler: got(bowlers),
    createBowler: created(bowlers),
    changeBowler: changed(bowlers),

    async exportPersonalData(request) {
      const { document, photos } = await personal.exportOf(request.params.id, writeOf(request));
      const text = new TextEncoder().encode(JSON.stringify(document, null, 2));
      const files = { "bowler.json": text, ...Object.fromEntries(photos.map(({ name, bytes }) => [`photos/${name}`, bytes])) };
      // Photos are compressed already.
      return { bytes: zipSync(files, { level: 1 }), type: "application/zip", name: "personal-data.zip" };
    },
    async erasePersonalData(request) {
      const { at, stillIn } = await personal.erase(request.params.id, writeOf(request));
      return { at, stillIn: [...stillIn] };
    },
  };
}
