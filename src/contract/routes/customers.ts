import { z } from "zod";
import { bowlerKept, bowlerWritten } from "../records/bowler.ts";
import { BOWLER_ROLES } from "../records/bowlerFields.ts";
import { personKept, personWritten } from "../records/person.ts";
import { changeRoute, createRoute, getRoute, listRoute } from "./kept.ts";
import { idParams } from "./parts.ts";
import { answers, route } from "./route.ts";

const erasedSchema = z.strictObject({
  at: z.string(),
  /** Copies of the records from before, which still hold the person; of this server, newest first. */
  stillIn: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.enum(["backup", "before restore"]),
      madeAt: z.string(),
      /** By when it will have gone; null where it stays until somebody deletes it. */
      goneBy: z.string().nullable(),
    }),
  ),
});

/** People of the shop, bowlers, and what is kept of one bowler. */
export const customerRoutes = {
  listPeople: listRoute("reader", "/api/people", "the people of the shop", personKept, ["state"]),
  getPerson: getRoute("reader", "/api/people/:id", "a person of the shop", personKept),
  createPerson: createRoute("owner", "/api/people", "a person of the shop", personWritten, personKept),
  changePerson: changeRoute("owner", "/api/people/:id", "a person of the shop", personWritten, personKept),

  listBowlers: listRoute(BOWLER_ROLES.see, "/api/bowlers", "bowlers", bowlerKept, []),
  getBowler: getRoute(BOWLER_ROLES.see, "/api/bowlers/:id", "a bowler", bowlerKept),
  createBowler: createRoute(BOWLER_ROLES.change, "/api/bowlers", "a bowler", bowlerWritten, bowlerKept),
  changeBowler: changeRoute(BOWLER_ROLES.change, "/api/bowlers/:id", "a bowler", bowlerWritten, bowlerKept),

  /** A post, because it is written down who took a bowler's data out. */
  exportPersonalData: route({
    least: "owner",
    method: "post",
    path: "/api/bowlers/:id/personal-data",
    params: idParams,
    does: "Everything that is kept of a bowler, with photos, as one ZIP file",
    answer: { kind: "file", status: 200, types: ["application/zip"] },
  }),
  erasePersonalData: route({
    least: "owner",
    method: "delete",
    path: "/api/bowlers/:id/personal-data",
    params: idParams,
    does: "Erases a bowler's personal data; work and money stay, without the person. Says which backups still hold them, and until when",
    again: true,
    answer: answers(erasedSchema),
    key: "allowed",
  }),
};
