import { z } from "zod";
import { mapping, oneOf, text } from "../job/fields.ts";
import { PHOTO_TYPES, photoKept, photoWritten, profileFileKept, profileFileWritten } from "../records/attachment.ts";
import { ballKept, ballWritten } from "../records/ball.ts";
import { BALL_ROLES } from "../records/ballFields.ts";
import { readingKept, readingWritten } from "../records/reading.ts";
import { stageDoneKept } from "../records/stageDone.ts";
import { referenceBallKept, referenceBallWritten } from "../records/stock.ts";
import { ticketKept } from "../records/ticket.ts";
import { changeRoute, createRoute, getRoute, listRoute, removeRoute } from "./kept.ts";
import { idParams } from "./parts.ts";
import { answers, route } from "./route.ts";

const ANY_BYTES = ["application/octet-stream"] as const;
const belongsTo = { ballId: text("Id of the ball").optional(), ticketId: text("Id of the ticket").optional() };

/** Said in the address, because the body is the file itself. */
const photoQuery = mapping(
  {
    ...belongsTo,
    bowlerId: text("Id of the bowler").optional(),
    of: oneOf(["condition", "serial", "crack", "surface", "other"], "What it shows"),
    takenAt: text("When, in UTC").optional(),
    note: text("Note").optional(),
  },
  "About the photo",
);
const profileQuery = mapping({ ...belongsTo, name: text("Name of the file"), note: text("Note").optional() }, "About the file");

const lastTimeSchema = z.strictObject({ ticket: ticketKept, stagesDone: z.array(stageDoneKept) });

const dueBallSchema = z.strictObject({ ball: ballKept, games: z.number(), dueAt: z.number() });
const dueSchema = z.strictObject({
  items: z.array(
    z.strictObject({
      bowlerId: z.string(),
      bowlerName: z.string(),
      phone: z.string().nullable(),
      balls: z.array(dueBallSchema).readonly(),
    }),
  ),
  of: z.number(),
});
export type DueByGames = z.output<typeof dueSchema>;

/** Balls, what was measured on them, and their photos and files. */
export const ballRoutes = {
  listBalls: listRoute(BALL_ROLES.see, "/api/balls", "balls", ballKept, ["bowlerId", "state", "job"]),
  getBall: getRoute(BALL_ROLES.see, "/api/balls/:id", "a ball", ballKept),
  createBall: createRoute(BALL_ROLES.change, "/api/balls", "a ball", ballWritten, ballKept),
  changeBall: changeRoute(BALL_ROLES.change, "/api/balls/:id", "a ball", ballWritten, ballKept),
  lastTime: route({
    least: "reader",
    method: "get",
    path: "/api/balls/:id/last-time",
    params: idParams,
    does: "The last finished work on a ball, with its stages as they were done; `last` is null where there is none",
    answer: answers(z.strictObject({ last: lastTimeSchema.nullable() })),
  }),
  dueBalls: route({
    least: "reader",
    method: "get",
    path: "/api/balls-due",
    does: "Whose balls have seen more games than their finish usually keeps and are not in the shop: the most overdue bowlers first, and how many there are in all",
    answer: answers(dueSchema),
  }),
  ballStagesDone: route({
    least: "reader",
    method: "get",
    path: "/api/balls/:id/stages-done",
    params: idParams,
    does: "Every stage that has been signed on a ball, oldest first",
    answer: answers(z.strictObject({ items: z.array(stageDoneKept) })),
  }),

  listReadings: listRoute("reader", "/api/readings", "readings", readingKept, ["ballId", "ticketId", "referenceBallId"]),
  getReading: getRoute("reader", "/api/readings/:id", "a reading", readingKept),
  createReading: createRoute("technician", "/api/readings", "a reading", readingWritten, readingKept),

  listReferenceBalls: listRoute("reader", "/api/reference-balls", "reference balls", referenceBallKept, []),
  getReferenceBall: getRoute("reader", "/api/reference-balls/:id", "a reference ball", referenceBallKept),
  createReferenceBall: createRoute("technician", "/api/reference-balls", "a reference ball", referenceBallWritten, referenceBallKept),
  changeReferenceBall: changeRoute("technician", "/api/reference-balls/:id", "a reference ball", referenceBallWritten, referenceBallKept),
  removeReferenceBall: removeRoute("technician", "/api/reference-balls/:id", "a reference ball"),

  listPhotos: listRoute("reader", "/api/photos", "photos", photoKept, ["ballId", "ticketId", "bowlerId"]),
  getPhoto: getRoute("reader", "/api/photos/:id", "what is known of a photo", photoKept),
  createPhoto: route({
    least: "counter",
    method: "post",
    path: "/api/photos",
    query: photoQuery,
    does: "Keeps a photo; what it says of place and camera is taken out first",
    body: { kind: "file", types: PHOTO_TYPES },
    answer: answers(photoKept, 201),
    key: "allowed",
    location: "/api/photos/:id",
  }),
  changePhoto: changeRoute("counter", "/api/photos/:id", "a photo", photoWritten, photoKept),
  removePhoto: removeRoute("counter", "/api/photos/:id", "a photo"),
  photoBytes: route({
    least: "reader",
    method: "get",
    path: "/api/photos/:id/bytes",
    params: idParams,
    does: "The photo itself",
    answer: { kind: "file", status: 200, types: PHOTO_TYPES },
  }),

  listProfileFiles: listRoute("reader", "/api/profile-files", "profile files", profileFileKept, ["ballId", "ticketId"]),
  getProfileFile: getRoute("reader", "/api/profile-files/:id", "what is known of a profile file", profileFileKept),
  createProfileFile: route({
    least: "technician",
    method: "post",
    path: "/api/profile-files",
    query: profileQuery,
    does: "Keeps a file that a tester wrote, as it is",
    body: { kind: "file", types: ANY_BYTES },
    answer: answers(profileFileKept, 201),
    key: "allowed",
    location: "/api/profile-files/:id",
  }),
  changeProfileFile: changeRoute("technician", "/api/profile-files/:id", "a profile file", profileFileWritten, profileFileKept),
  removeProfileFile: removeRoute("technician", "/api/profile-files/:id", "a profile file"),
  profileFileBytes: route({
    least: "reader",
    method: "get",
    path: "/api/profile-files/:id/bytes",
    params: idParams,
    does: "The file itself",
    answer: { kind: "file", status: 200, types: ANY_BYTES },
  }),
};
