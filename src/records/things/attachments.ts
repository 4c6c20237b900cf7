import { createHash } from "node:crypto";
import { readFile, rm } from "node:fs/promises";
import { join } from "node:path";
import type { Photo, PhotoWritten, ProfileFile, ProfileFileWritten } from "#contract/records/attachment";
import { photoKept, photoWritten, profileFileKept, profileFileWritten } from "#contract/records/attachment";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import { asRecordsFault, withFaults } from "../database/driverFault.ts";
import { EXTENSIONS, photoOf } from "../photos/photoBytes.ts";
import { writeSynced } from "../photos/syncedFile.ts";
import type { Attachments } from "../records.ts";
import type { Session } from "../session.ts";
import type { Definition, Fields } from "./definition.ts";
import { checkedFields } from "./rows.ts";
import { store } from "./store.ts";

export const photoKind: Definition<Photo> = {
  kind: "photos",
  written: photoWritten,
  kept: photoKept,
  lookups: { ballId: "balls", ticketId: "tickets", bowlerId: "bowlers" },
};

export const profileFileKind: Definition<ProfileFile> = {
  kind: "profileFiles",
  written: profileFileWritten,
  kept: profileFileKept,
  lookups: { ballId: "balls", ticketId: "tickets" },
};

interface Stored extends Kept {
  readonly sha256: string;
}

/** How the files of a kind are named, and what is kept of the bytes that are handed in. */
interface FileKind<Thing extends Stored> {
  readonly definition: Definition<Thing>;
  readonly folder: string;
  readonly taken: (bytes: Uint8Array) => { readonly bytes: Uint8Array; readonly extra: Fields };
}

export function photos(session: Session, live: string): Attachments<Photo, PhotoWritten, "ballId" | "ticketId" | "bowlerId"> {
  return attachments(session, {
    definition: photoKind,
    folder: join(live, "photos"),
    taken: (given) => {
      const { type, bytes } = photoOf(given);
      return { bytes, extra: { type } };
    },
  });
}

export function profileFiles(session: Session, live: string): Attachments<ProfileFile, ProfileFileWritten, "ballId" | "ticketId"> {
  return attachments(session, { definition: profileFileKind, folder: join(live, "profiles"), taken: profileOf });
}

const MOST_PROFILE_BYTES = 40_000_000;

function profileOf(bytes: Uint8Array): { bytes: Uint8Array; extra: Fields } {
  if (bytes.length > 0 && bytes.length <= MOST_PROFILE_BYTES) return { bytes, extra: {} };
  const problem = { path: "bytes", value: bytes.length, allowed: `1 to ${MOST_PROFILE_BYTES} bytes` };
  throw new RecordsFault("refused", "profileFiles", { problems: [problem] });
}

/** A file is named by what is in it, so that it can be on the disk before its row has an id, and the same picture lies there once. */
export function fileNameOf(attachment: Pick<Stored, "sha256"> & { readonly type?: keyof typeof EXTENSIONS }): string {
  return `${attachment.sha256}.${attachment.type === undefined ? "profile" : EXTENSIONS[attachment.type]}`;
}

function attachments<Thing extends Stored, Written, Filter extends string>(
  session: Session,
  { definition, folder, taken }: FileKind<Thing>,
): Attachments<Thing, Written, Filter> {
  const { kind, written } = definition;
  const { get, list, change, make, remove } = store(session, definition);
  const pathOf = (thing: Thing) => join(folder, fileNameOf(thing));
  return {
    get,
    list,
    change: change as Attachments<Thing, Written, Filter>["change"],
    async add(given, handedIn, write) {
      const fields = checkedFields(written, given, kind);
      const { bytes, extra } = taken(handedIn);
      const file = { bytes: bytes.length, sha256: sha256Of(bytes), ...extra } as unknown as Thing;
      await withFaults(folder, () => writeSynced(pathOf(file), bytes));
      return make(fields, file as unknown as Fields, write);
    },
    async bytes(id) {
      const thing = await get(id);
      const bytes = await readFile(pathOf(thing)).catch((cause: unknown) => {
        const fault = asRecordsFault(cause, pathOf(thing));
        throw fault instanceof RecordsFault && fault.kind === "notFound" ? new RecordsFault("damaged", `${kind} ${id}`, { cause }) : fault;
      });
      if (sha256Of(bytes) !== thing.sha256) throw new RecordsFault("damaged", `${kind} ${id}`);
      return bytes;
    },
    async remove(id, write) {
      const thing = await get(id);
      await remove(id, write);
      await removeUnused(session, kind as "photos", thing, pathOf(thing));
    },
  };
}

/** Takes a file away when no row refers to it any more. */
export async function removeUnused({ db }: Session, kind: "photos" | "profileFiles", thing: Stored, path: string): Promise<void> {
  const other = await db.selectFrom(kind).select("id").where("body", "like", `%${thing.sha256}%`).executeTakeFirst();
  if (other === undefined) await rm(path, { force: true });
}

function sha256Of(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
