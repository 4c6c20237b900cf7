import { saveBlob } from "../client/saveFile.ts";
import { actingPerson, PERSON_HEADER } from "./person.ts";
import { refusalOf, ShopFault } from "./shopClient.ts";

/**
 * Asks the shop for a file and offers it to be saved. Not a plain link: the shop writes down who took the data out.
 *
 * @throws {ShopFault} when the server refuses or cannot be reached
 */
export async function saveFromShop(
  path: `/api/${string}`,
  method: "GET" | "POST",
  name: string,
  headers: Readonly<Record<string, string>> = {},
): Promise<void> {
  const person = actingPerson();
  const response = await fetch(path, { method, headers: { ...headers, ...(person === null ? {} : { [PERSON_HEADER]: person }) } }).catch(
    (error: unknown) => {
      throw new ShopFault(null, error instanceof Error ? error.message : String(error));
    },
  );
  if (!response.ok) throw await refusalOf(response);
  saveBlob(await response.blob(), name);
}
