import { SHOP } from "#words/en/rooms/shop";
import { saveFromShop } from "../../shop/shopFile.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

/** Everything in open formats, to go elsewhere with. */
export function ExportAll() {
  const save = useWrite((_: undefined) => saveFromShop("/api/export", "GET", "everything.zip"), []);
  return (
    <>
      <p className="note">{SHOP.exportWhy}</p>
      <button type="button" className="button" disabled={save.isPending} onClick={() => save.mutate(undefined)}>
        {SHOP.exportAll}
      </button>
      <WriteFault error={save.error} />
    </>
  );
}
