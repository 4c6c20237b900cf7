import type { ProfileFile } from "#contract/records/attachment";
import { profileFileKept } from "#contract/records/attachment";
import { actingPerson, PERSON_HEADER } from "./person.ts";
import { answered, refusalOf, ShopFault, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** The tester's files that are kept with a ball, newest first. */
export function useProfileFiles(ballId: string) {
  return useRead(["profile-files", ballId], () => answered(shop["profile-files"].$get({ query: { ballId, limit: "200" } })));
}

export interface ProfileToKeep {
  readonly file: File;
  readonly belongs: { readonly ballId: string; readonly ticketId?: string };
  /** Sent again with it, the file is kept once. */
  readonly key: string;
}

/**
 * Keeps a tester's file as it is.
 *
 * @throws {ShopFault} when it is too large, or the server cannot be reached
 */
export async function keepProfileFile({ file, belongs, key }: ProfileToKeep): Promise<ProfileFile> {
  const person = actingPerson();
  const response = await fetch(`/api/profile-files?${new URLSearchParams({ ...belongs, name: file.name })}`, {
    method: "POST",
    headers: {
      "Content-Type": "application/octet-stream",
      "Idempotency-Key": key,
      ...(person === null ? {} : { [PERSON_HEADER]: person }),
    },
    body: file,
  }).catch((error: unknown) => {
    throw new ShopFault(null, error instanceof Error ? error.message : String(error));
  });
  if (!response.ok) throw await refusalOf(response);
  return profileFileKept.parse(await response.json());
}
