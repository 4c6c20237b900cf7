import { SHOP } from "#words/en/rooms/shop";
import { type Column, PlainTable } from "../../pieces/PlainTable.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { saveFromShop } from "../../shop/shopFile.ts";
import { usePasswordAgain } from "../../shop/usePasswordAgain.tsx";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

const listed = () => answered(shop.backups.$get());
type Backup = Awaited<ReturnType<typeof listed>>["items"][number];

/** The checked copies of the records: made, read through again, kept elsewhere. */
export function Backups() {
  const times = useShopTimes();
  const backups = useRead(["backups"], listed);
  const make = useWrite((_: undefined) => answered(shop.backups.$post()), ["backups"]);
  const { field, headers, isMissing } = usePasswordAgain();
  const take = useWrite((name: string) => saveFromShop(`/api/backups/${encodeURIComponent(name)}`, "GET", name, headers), ["audit"]);
  const verify = useWrite((name: string) => answered(shop.backups[":name"].verify.$post({ param: { name } })), []);
  // One that failed is told in the list too.
  const makeOne = () => make.mutate(undefined, { onError: () => void backups.refetch() });
  return (
    <>
      <p className="note">{SHOP.backupsWhy}</p>
      <button type="button" className="button" disabled={make.isPending} onClick={makeOne}>
        {make.isPending ? SHOP.making : SHOP.makeBackup}
      </button>
      <WriteFault error={make.error} />
      {verify.data !== undefined && (
        <p role="status">
          {SHOP.sound(verify.variables, verify.data.files, verify.data.counts.tickets ?? 0)}{" "}
          {verify.data.missing.length > 0 && SHOP.missingFiles(verify.data.missing.length)}
        </p>
      )}
      <WriteFault error={verify.error} />
      {backups.data?.failed != null && (
        <p role="status" className="failed">
          {SHOP.backupFailed(times.at(backups.data.failed.at), SHOP.backupFaults[backups.data.failed.fault] ?? SHOP.backupFaults.otherwise)}
        </p>
      )}
      <Reading of={backups} isEmpty={({ items }) => items.length === 0} empty={SHOP.noBackups}>
        {({ items }) => (
          <>
            {field}
            <WriteFault error={take.error} />
            <BackupTable
              backups={items}
              isBusy={verify.isPending || take.isPending}
              mayTake={!isMissing}
              onVerify={(name) => verify.mutate(name)}
              onTake={(name) => take.mutate(name)}
            />
          </>
        )}
      </Reading>
      <p className="note">{SHOP.restoreHow}</p>
    </>
  );
}

interface TableProps {
  readonly backups: readonly Backup[];
  readonly isBusy: boolean;
  /** Whether the password is typed that taking one out wants. */
  readonly mayTake: boolean;
  onVerify(name: string): void;
  onTake(name: string): void;
}

function BackupTable({ backups, isBusy, mayTake, onVerify, onTake }: TableProps) {
  const times = useShopTimes();
  const words = SHOP.backup;
  const columns: readonly Column<Backup>[] = [
    { name: words.madeAt, kind: "day", cell: ({ madeAt }) => times.at(madeAt) },
    { name: words.why, cell: ({ why }) => SHOP.backupWhys[why] },
    { name: words.bytes, kind: "figure", cell: ({ bytes }) => SHOP.megabytes(bytes) },
    {
      name: SHOP.verify,
      kind: "press",
      cell: ({ name }) => (
        <button type="button" className="button" aria-label={SHOP.verifyOf(name)} disabled={isBusy} onClick={() => onVerify(name)}>
          {SHOP.verify}
        </button>
      ),
    },
    {
      name: SHOP.download,
      kind: "press",
      cell: ({ name }) => (
        <button
          type="button"
          className="button"
          aria-label={SHOP.downloadOf(name)}
          disabled={isBusy || !mayTake}
          onClick={() => onTake(name)}
        >
          {SHOP.download}
        </button>
      ),
    },
  ];
  return <PlainTable name={SHOP.backups} columns={columns} rows={backups} keyOf={({ name }) => name} />;
}
