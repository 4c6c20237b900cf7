import type { Photo } from "#contract/records/attachment";
import { everyPage } from "./everyPage.ts";
import { actingPerson, PERSON_HEADER } from "./person.ts";
import { answered, refusalOf, ShopFault, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** What photos belong to. */
export type PhotosOf = { readonly ballId: string } | { readonly ticketId: string };

export function usePhotos(of: PhotosOf) {
  return useRead(["photos", of], () => everyPage((after) => answered(shop.photos.$get({ query: { limit: "200", ...of, ...after } }))));
}

export interface PhotoToKeep {
  readonly file: File;
  readonly of: Photo["of"];
  readonly belongs: { readonly ballId: string; readonly ticketId?: string };
  /** Sent again with it, the photo is kept once. */
  readonly key: string;
}

/**
 * Sends a photo as it is. The shop takes place and camera out of it.
 *
 * @throws {ShopFault} when it is no picture, too large, or the server cannot be reached
 */
export async function keepPhoto({ file, of, belongs, key }: PhotoToKeep): Promise<void> {
  const takenAt = new Date(file.lastModified).toISOString();
  const person = actingPerson();
  const response = await fetch(`/api/photos?${new URLSearchParams({ ...belongs, of, takenAt })}`, {
    method: "POST",
    headers: {
      "Content-Type": file.type === "" ? "application/octet-stream" : file.type,
      "Idempotency-Key": key,
      ...(person === null ? {} : { [PERSON_HEADER]: person }),
    },
    body: file,
  }).catch((error: unknown) => {
    throw new ShopFault(null, error instanceof Error ? error.message : String(error));
  });
  if (!response.ok) throw await refusalOf(response);
}
