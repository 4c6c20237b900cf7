import type { StockItem } from "#contract/records/stock";
import { STOCK } from "#words/en/rooms/stock";
import { EditFields, problemsBeside } from "../../pieces/EditForm.tsx";
import { Fold } from "../../pieces/Fold.tsx";
import { emptied } from "../../shop/emptied.ts";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { figureOrNull } from "../../shop/typedValues.ts";
import type { Typed } from "../../shop/useEditing.ts";
import { useKept } from "../../shop/useKept.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { itemWritten, NEW_FIELDS, NEW_ITEM } from "./stockForm.ts";

/** Something that the shop begins to keep, with how much of it is there. */
export function NewItem() {
  const [draft, setDraft] = useKept("gritwright.stock.new", () => ({ key: newKey(), typed: NEW_ITEM }));
  const write = useWrite(putIn, ["stock-items", "stock-movements", "stock"]);
  const problems = problemsBeside(write.error, NEW_FIELDS);
  return (
    <section className="plate">
      <Fold title={STOCK.add} summary={STOCK.addWhy} startsOpen="never">
        <form
          onSubmit={(event) => {
            event.preventDefault();
            const clear = emptied(draft.typed, NEW_ITEM);
            write.mutate(draft, { onSuccess: () => setDraft(({ typed }) => ({ key: newKey(), typed: clear(typed) })) });
          }}
        >
          <EditFields
            fields={NEW_FIELDS}
            typed={draft.typed}
            problems={problems}
            onSet={(path, value) => setDraft({ ...draft, typed: { ...draft.typed, [path]: value } })}
          />
          {problems.length === 0 && <WriteFault error={write.error} />}
          <button type="submit" className="button" disabled={write.isPending}>
            {STOCK.keepItem}
          </button>
        </form>
      </Fold>
    </section>
  );
}

/** The item, and what lies there as a count. Both have keys of the draft's, so that pressing again keeps nothing twice. */
async function putIn({ key, typed }: { readonly key: string; readonly typed: Typed }): Promise<StockItem> {
  const once = (part: string) => ({ headers: { "Idempotency-Key": `${key}-${part}` } });
  const first = figureOrNull(typed.first);
  const json = { ...itemWritten(typed), unit: typed.unit as StockItem["unit"] };
  const item = await answered(shop["stock-items"].$post({ json }, once("item")));
  if (first === null) return item;
  const count = { stockItemId: item.id, at: item.createdAt, change: first, why: "counted" } as const;
  await answered(shop["stock-movements"].$post({ json: count }, once("count")));
  return item;
}
