import { createHash } from "node:crypto";
import { z } from "zod";
import type { Photo, PhotoWritten, ProfileFile, ProfileFileWritten } from "#contract/records/attachment";
import { PHOTO_TYPES, photoKept, photoWritten, profileFileKept, profileFileWritten } from "#contract/records/attachment";
import { RecordsFault } from "#contract/records/fault";
import type { Kept } from "#contract/records/fields";
import { EXTENSIONS, photoOf } from "../photos/photoBytes.ts";
import type { Attachments } from "../records.ts";
import type { Session } from "../session.ts";
import type { Definition, Fields } from "./definition.ts";
import { checkedFields, fieldsIn } from "./rows.ts";
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
  readonly taken: (bytes: Uint8Array) => { readonly bytes: Uint8Array; readonly extra: Fields };
}

export function photos(session: Session): Attachments<Photo, PhotoWritten, "ballId" | "ticketId" | "bowlerId"> {
  return attachments(session, {
    definition: photoKind,
    taken: (given) => {
      const { type, bytes } = photoOf(given);
      return { bytes, extra: { type } };
    },
  });
}

export function profileFiles(session: Session): Attachments<ProfileFile, ProfileFileWritten, "ballId" | "ticketId"> {
  return attachments(session, { definition: profileFileKind, taken: profileOf });
}

const MOST_PROFILE_BYTES = 40_000_000;

function profileOf(bytes: Uint8Array): { bytes: Uint8Array; extra: Fields } {
  if (bytes.length > 0 && bytes.length <= MOST_PROFILE_BYTES) return { bytes, extra: {} };
  const problem = { path: "bytes", value: bytes.length, allowed: `1 to ${MOST_PROFILE_BYTES} bytes` };
  throw new RecordsFault("refused", "profileFiles", { problems: [problem] });
}

/** A file is named by what is in it, so that it can be there before its row has an id, and the same picture lies there once. */
export function fileNameOf({ sha256, type }: Pick<Stored, "sha256"> & { readonly type?: keyof typeof EXTENSIONS }): string {
  return type === undefined ? `profiles/${sha256}.profile` : `photos/${sha256}.${EXTENSIONS[type]}`;
}

/** The same of a row's body; null where it cannot be read. */
export function fileNameIn(body: string): string | null {
  const read = storedFile.safeParse(fieldsIn(body));
  if (!read.success) return null;
  const { sha256, type } = read.data;
  return fileNameOf(type === undefined ? { sha256 } : { sha256, type });
}

/** What a body that cannot be read may have meant: every checksum that can be made out in it, as a file of each kind. */
export function fileNamesPerhaps(body: string): string[] {
  const sums = body.match(/(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])/g) ?? [];
  return sums.flatMap((sha256) => [fileNameOf({ sha256 }), ...PHOTO_TYPES.map((type) => fileNameOf({ sha256, type }))]);
}

const storedFile = z.object({ sha256: z.string().regex(/^[0-9a-f]{64}$/), type: z.enum(PHOTO_TYPES).optional() });

function attachments<Thing extends Stored, Written, Filter extends string>(
  session: Session,
  { definition, taken }: FileKind<Thing>,
): Attachments<Thing, Written, Filter> {
  const { kind, written } = definition;
  const { get, list, change } = store(session, definition);
  return {
    get,
    list,
    change: change as Attachments<Thing, Written, Filter>["change"],
    async add(given, handedIn, write) {
      const fields = checkedFields(written, given, kind);
      const { bytes, extra } = taken(handedIn);
      const file = { bytes: bytes.length, sha256: sha256Of(bytes), ...extra } as unknown as Thing;
      return session.write(write, async (inside) => {
        await session.files.put(inside.acrossShops().db, fileNameOf(file), bytes);
        return store(inside, definition).make(fields, file as unknown as Fields, { by: write.by });
      });
    },
    async bytes(id) {
      const thing = await get(id);
      // Which file it is, was read from a row of this shop; files themselves belong to none.
      const bytes = await session.files.get(session.acrossShops().db, fileNameOf(thing));
      if (bytes === null || sha256Of(bytes) !== thing.sha256) throw new RecordsFault("damaged", `${kind} ${id}`);
      return bytes;
    },
    async remove(id, write) {
      let finish = async (): Promise<void> => {};
      await session.write(write, async (inside) => {
        const own = store(inside, definition);
        const name = fileNameOf(await own.get(id));
        await own.remove(id, { by: write.by, expectedVersion: write.expectedVersion });
        finish = await removeUnused(inside, [name]);
      });
      await finish();
    },
  };
}

/** Takes files away that no row refers to any more, whichever shop's. Returns what is left to do once the write has been kept. */
export async function removeUnused(inside: Session, names: readonly string[]): Promise<() => Promise<void>> {
  const { db } = inside.acrossShops();
  const unused: string[] = [];
  for (const name of names) {
    const [folder, file] = name.split("/");
    const kind = folder === "photos" ? "photos" : "profileFiles";
    const other = await db
      .selectFrom(kind)
      .select("id")
      .where("body", "like", `%${file.split(".")[0]}%`)
      .executeTakeFirst();
    if (other === undefined) unused.push(name);
  }
  return inside.files.remove(db, unused);
}

function sha256Of(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}
