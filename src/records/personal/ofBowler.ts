import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { withFaults } from "../database/driverFault.ts";
import type { ShopFolder } from "../folder.ts";
import { type Session, timeOf } from "../session.ts";
import { fileNameOf } from "../things/attachments.ts";
import { bowlers } from "../things/bowlers.ts";
import { store } from "../things/store.ts";
import { erase } from "./erase.ts";
import { gather } from "./gather.ts";
import { addErasure } from "./ledger.ts";
import type { Personal } from "./personal.ts";

export function personal(session: Session, folder: ShopFolder): Personal {
  return {
    exportOf: (bowlerId, write) =>
      session.write(write, async (inside) => {
        const found = await gather(inside, bowlerId);
        await inside.note({ by: write.by, did: "export", kind: "bowlers", thingId: bowlerId, fields: [] });
        const photos = found.photos.map(async (photo) => {
          const name = fileNameOf(photo);
          return { name, bytes: new Uint8Array(await readFile(join(folder.live, "photos", name))) };
        });
        return {
          document: { gritwright: 1, kind: "personal data", madeAt: timeOf(inside.now()), ...found },
          photos: await Promise.all(photos),
        };
      }),
    erase: (bowlerId, { by }) =>
      withFaults(folder.erasures, async () => {
        await store(session, bowlers).get(bowlerId);
        const erasure = { bowlerId, at: timeOf(session.now()), by };
        // First the ledger: an erasure that the power interrupts is ended when the records are opened again.
        await addErasure(folder, erasure);
        await erase(session, folder, erasure);
      }),
  };
}
