import { SHOP } from "#words/en/rooms/shop";
import { saveFromShop } from "../../shop/shopFile.ts";
import { usePasswordAgain } from "../../shop/usePasswordAgain.tsx";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";

/** Everything in open formats, to go elsewhere with. */
export function ExportAll() {
  const { field, headers, isMissing } = usePasswordAgain();
  const save = useWrite((_: undefined) => saveFromShop("/api/export", "GET", "everything.zip", headers), ["audit"]);
  return (
    <>
      <p className="note">{SHOP.exportWhy}</p>
      {field}
      <button type="button" className="button" disabled={save.isPending || isMissing} onClick={() => save.mutate(undefined)}>
        {SHOP.exportAll}
      </button>
      <WriteFault error={save.error} />
    </>
  );
}
