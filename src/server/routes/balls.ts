import type { StageDone } from "#contract/records/stageDone";
import type { Ticket } from "#contract/records/ticket";
import type { ballRoutes } from "#contract/routes/balls";
import type { Records } from "#records/records";
import { dueBalls } from "../dueBalls.ts";
import { everything } from "../everything.ts";
import { pictureType } from "../http/fileTypes.ts";
import type { Handlers } from "../http/mount.ts";
import { fieldRefusal } from "../http/refusal.ts";
import { stated } from "../stated.ts";
import { changed, created, got, listed, removed, writeOf } from "./keptHandlers.ts";

export function ballHandlers(records: Records): Handlers<typeof ballRoutes> {
  const { balls, tickets, stagesDone, readings, referenceBalls, photos, profileFiles, search } = records;
  return {
    listBalls: listed(balls),
    getBall: got(balls),
    createBall: created(balls),
    changeBall: changed(balls),
    async lastTime({ params }) {
      await balls.get(params.id);
      const last = await search.lastTime(params.id);
      return { last: last === null ? null : { ticket: last.ticket, stagesDone: [...last.stagesDone] } };
    },
    dueBalls: () => dueBalls(records),
    async ballStagesDone({ params }) {
      await balls.get(params.id);
      const ofBall = await everything<Ticket>((after) => tickets.list({ after, where: { ballId: params.id } }));
      const items: StageDone[] = [];
      for (const { id } of ofBall)
        items.push(...(await everything<StageDone>((after) => stagesDone.list({ after, where: { ticketId: id } }))));
      return { items: items.toSorted((a, b) => a.doneAt.localeCompare(b.doneAt)) };
    },

    listReadings: listed(readings),
    getReading: got(readings),
    createReading: created(readings),

    listReferenceBalls: listed(referenceBalls),
    getReferenceBall: got(referenceBalls),
    createReferenceBall: created(referenceBalls),
    changeReferenceBall: changed(referenceBalls),
    removeReferenceBall: removed(referenceBalls),

    listPhotos: listed(photos),
    getPhoto: got(photos),
    createPhoto(request) {
      refuseNoPicture(request.body);
      return photos.add(stated(request.query), request.body, writeOf(request));
    },
    changePhoto: changed(photos),
    removePhoto: removed(photos),
    async photoBytes({ params }) {
      const { type } = await photos.get(params.id);
      return { bytes: await photos.bytes(params.id), type, name: null };
    },

    listProfileFiles: listed(profileFiles),
    getProfileFile: got(profileFiles),
    createProfileFile: (request) => profileFiles.add(stated(request.query), request.body, writeOf(request)),
    changeProfileFile: changed(profileFiles),
    removeProfileFile: removed(profileFiles),
    profileFileBytes: async ({ params }) => ({
      bytes: await profileFiles.bytes(params.id),
      type: "application/octet-stream",
      name: "profile.dat",
    }),
  };
}

/** What a file claims to be is the sender's word; its first bytes are not. */
function refuseNoPicture(bytes: Uint8Array): void {
  if (pictureType(bytes) !== null) return;
  const first = [...bytes.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join(" ");
  throw fieldRefusal("wrongType", "body", first, "JPEG, PNG or WebP", "These bytes are not a JPEG, PNG or WebP picture.");
}
