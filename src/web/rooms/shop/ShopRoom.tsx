import { useEffect } from "react";
import { ACCESS } from "#words/en/rooms/access";
import { SHOP } from "#words/en/rooms/shop";
import { Fold } from "../../pieces/Fold.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { For, useSession } from "../../shop/useSession.tsx";
import { useSettings } from "../../shop/zone.ts";
import { AuditTrail } from "./AuditTrail.tsx";
import { Backups } from "./Backups.tsx";
import { CautionList } from "./CautionList.tsx";
import { ExportAll } from "./ExportAll.tsx";
import { ImportList } from "./ImportList.tsx";
import { ModelAssumptions } from "./ModelAssumptions.tsx";
import { OpeningHours } from "./OpeningHours.tsx";
import { People } from "./People.tsx";
import { Prices } from "./Prices.tsx";
import { Sessions } from "./Sessions.tsx";
import { ShopSettings } from "./ShopSettings.tsx";
import { SignIns } from "./SignIns.tsx";
import { UnreadableThings } from "./UnreadableThings.tsx";

/** What the shop has settled on, who works here, what work costs, what is kept safe, and what the model assumes. Parts are read when they are opened. */
export function ShopRoom() {
  const settings = useSettings();
  const { state } = useSession();
  useEffect(() => {
    document.title = SHOP.title;
  }, []);
  return (
    <main id="answer" className="room shop-room" tabIndex={-1}>
      <div className="room-head">
        <h1>{SHOP.title}</h1>
      </div>
      <div className="room-columns even-columns">
        <div>
          <Reading of={settings}>
            {(read) => (
              <>
                <ShopSettings settings={read} />
                <OpeningHours settings={read} />
              </>
            )}
          </Reading>
          <section className="plate">
            <Fold title={SHOP.people} summary="" startsOpen="wide">
              <People />
            </Fold>
            <For least="owner">
              <Fold title={ACCESS.signIns} summary="" startsOpen="wide">
                <SignIns />
              </Fold>
            </For>
            {state === "signed in" && (
              <Fold title={ACCESS.sessions} summary="" startsOpen="never">
                <Sessions />
              </Fold>
            )}
            <For least="counter">
              <Fold title={SHOP.prices} summary="" startsOpen="wide">
                <Prices />
              </Fold>
            </For>
          </section>
        </div>
        <For least="owner">
          <section className="plate">
            <Fold title={SHOP.backups} summary="" startsOpen="wide">
              <Backups />
            </Fold>
            <Fold title={SHOP.unreadable} summary="" startsOpen="never">
              <UnreadableThings />
            </Fold>
            <Fold title={SHOP.imports} summary="" startsOpen="never">
              <ImportList />
            </Fold>
            <Fold title={SHOP.export} summary="" startsOpen="never">
              <ExportAll />
            </Fold>
          </section>
        </For>
      </div>
      <section className="plate">
        <Fold title={SHOP.assumptions} summary="" startsOpen="never">
          <ModelAssumptions />
        </Fold>
        <Fold title={SHOP.cautions} summary="" startsOpen="never">
          <CautionList />
        </Fold>
        <For least="owner">
          <Fold title={SHOP.trail} summary="" startsOpen="never">
            <AuditTrail />
          </Fold>
        </For>
      </section>
    </main>
  );
}
