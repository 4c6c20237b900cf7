import { useEffect } from "react";
import { Link } from "wouter";
import { SHOP } from "#words/en/rooms/shop";
import { Fold } from "../../pieces/Fold.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { useSettings } from "../../shop/zone.ts";
import { AuditTrail } from "./AuditTrail.tsx";
import { Backups } from "./Backups.tsx";
import { CautionList } from "./CautionList.tsx";
import { ExportAll } from "./ExportAll.tsx";
import { ImportList } from "./ImportList.tsx";
import { ModelAssumptions } from "./ModelAssumptions.tsx";
import { People } from "./People.tsx";
import { Prices } from "./Prices.tsx";
import { ShopSettings } from "./ShopSettings.tsx";

/** What the shop has settled on, who works here, what work costs, what is kept safe, and what the model assumes. Parts are read when they are opened. */
export function ShopRoom() {
  const settings = useSettings();
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
          <Reading of={settings}>{(read) => <ShopSettings settings={read} />}</Reading>
          <section className="plate">
            <Fold title={SHOP.people} summary="" startsOpen="wide">
              <People />
            </Fold>
            <Fold title={SHOP.prices} summary="" startsOpen="wide">
              <Prices />
            </Fold>
          </section>
        </div>
        <section className="plate">
          <Fold title={SHOP.backups} summary="" startsOpen="wide">
            <Backups />
          </Fold>
          <Fold title={SHOP.imports} summary="" startsOpen="never">
            <ImportList />
          </Fold>
          <Fold title={SHOP.export} summary="" startsOpen="never">
            <ExportAll />
          </Fold>
        </section>
      </div>
      <section className="plate">
        <Fold title={SHOP.assumptions} summary="" startsOpen="never">
          <ModelAssumptions />
        </Fold>
        <Fold title={SHOP.cautions} summary="" startsOpen="never">
          <CautionList />
        </Fold>
        <Fold title={SHOP.trail} summary="" startsOpen="never">
          <AuditTrail />
        </Fold>
        <p>
          <Link href="/design">{SHOP.pieces}</Link>
        </p>
      </section>
    </main>
  );
}
