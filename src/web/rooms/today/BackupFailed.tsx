import { Link } from "wouter";
import { TODAY } from "#words/en/rooms/today";
import { answered, shop } from "../../shop/shopClient.ts";
import { useMay } from "../../shop/useDoor.tsx";
import { useRead } from "../../shop/useShop.ts";

/** How often it is asked again, ms. */
const ASK_AGAIN_MS = 60_000;

/** That the last backup is none; an owner is led to why, everybody else to an owner. */
export function BackupFailed() {
  const health = useRead(["backups", "health"], () => answered(shop.health.$get()), { everyMs: ASK_AGAIN_MS });
  const may = useMay();
  if (health.data?.lastBackup !== "failed") return null;
  return (
    <p className="failed" role="status">
      {TODAY.backupFailed} {may("owner") ? <Link href="/shop">{TODAY.backupFailedWhy}</Link> : TODAY.backupFailedTell}
    </p>
  );
}
