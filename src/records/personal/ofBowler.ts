import { basename } from "node:path";
import { RecordsFault } from "#contract/records/fault";
import { withFaults } from "../database/driverFault.ts";
import { type Session, timeOf } from "../session.ts";
import { fileNameOf } from "../things/attachments.ts";
import { erase } from "./erase.ts";
import { gather } from "./gather.ts";
import type { Ledger } from "./ledger.ts";
import type { OlderCopy, Personal } from "./personal.ts";

/** @param olderCopies copies of the records that were made before now */
export function personal(session: Session, ledger: Ledger, olderCopies: () => Promise<readonly OlderCopy[]>): Personal {
  return {
    exportOf: (bowlerId, write) =>
      session.write(write, async (inside) => {
        // A bowler has a right to what every shop of the database keeps of them.
        const everywhere = inside.acrossShops();
        const found = await gather(everywhere, bowlerId);
        await inside.note({ shopId: inside.shopId, by: write.by, did: "export", kind: "bowlers", thingId: bowlerId, fields: [] });
        const photos: { name: string; bytes: Uint8Array }[] = [];
        for (const photo of found.photos) {
          const bytes = await inside.files.get(everywhere.db, fileNameOf(photo));
          if (bytes === null) throw new RecordsFault("damaged", `photos ${photo.id}`);
          photos.push({ name: basename(fileNameOf(photo)), bytes: new Uint8Array(bytes) });
        }
        return { document: { gritwright: 1, kind: "personal data", madeAt: timeOf(inside.now()), ...found }, photos };
      }),
    erase: (bowlerId, { by }) =>
      withFaults("the ledger of erasures", async () => {
        const row = await session.db.selectFrom("bowlers").select("createdAt").where("id", "=", bowlerId).executeTakeFirst();
        if (row === undefined) throw new RecordsFault("notFound", `bowlers ${bowlerId}`);
        const erasure = { bowlerId, at: timeOf(session.now()), by };
        // First the ledger: an erasure that the power interrupts is ended when the records are opened again.
        await ledger.add(erasure);
        await erase(session, erasure);
        // What was made before anything was kept of them does not hold them.
        return { at: erasure.at, stillIn: (await olderCopies()).filter(({ madeAt }) => madeAt >= row.createdAt) };
      }),
  };
}
