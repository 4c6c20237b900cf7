import { Link } from "wouter";
import { TODAY } from "#words/en/rooms/today";
import { useMay } from "../../shop/useDoor.tsx";
import { useHealth } from "../../shop/useHealth.ts";

/** What is wrong with the records: that the last backup is none, that some of them cannot be read. An owner is led to why, everybody else to an owner. */
export function RecordsTrouble() {
  const { data } = useHealth();
  if (data === undefined) return null;
  return (
    <>
      {data.lastBackup === "failed" && <Trouble what={TODAY.backupFailed} />}
      {data.lostFiles > 0 && <Trouble what={TODAY.lostFiles(data.lostFiles)} />}
      {data.unreadable > 0 && <Trouble what={TODAY.unreadable(data.unreadable)} />}
    </>
  );
}

function Trouble({ what }: { readonly what: string }) {
  const may = useMay();
  return (
    <p className="failed" role="status">
      {what} {may("owner") ? <Link href="/shop">{TODAY.shopSaysWhy}</Link> : TODAY.tellOwner}
    </p>
  );
}
