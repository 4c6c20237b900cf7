import { useState } from "react";
import { JobFault } from "#contract/problem";
import { tableText } from "#exchange/tableText";
import { SHOP } from "#words/en/rooms/shop";
import { problemText } from "#words/problemText";
import { WordField } from "../../pieces/PlainFields.tsx";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { type Done, IMPORT_TOUCHES, type ImportKind, ImportPreview, type List } from "./ImportPreview.tsx";

/** A table of customers or balls: looked at first, then taken in as a whole, and taken out again if it was the wrong one. */
export function ImportList() {
  const [kind, setKind] = useState<ImportKind>("bowlers");
  const [list, setList] = useState<List | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  // The last import can still be undone after a reload.
  const [done, setDone] = useKept<Done | null>("gritwright.shop.import", () => null);
  const open = async (file: File | undefined) => {
    if (file === undefined) return;
    try {
      const csv = tableText(new Uint8Array(await file.arrayBuffer()));
      setRefusal(null);
      setList({ key: newKey(), kind, csv, mapping: null });
    } catch (fault) {
      if (!(fault instanceof JobFault)) throw fault;
      setRefusal(fault.problems.map((problem) => problemText(problem)).join(" "));
      setList(null);
    }
  };
  return (
    <>
      <p className="note">{SHOP.importsWhy}</p>
      {done !== null && <Undo done={done} onUndone={() => setDone(null)} />}
      <WordField
        label={SHOP.importKind}
        value={kind}
        words={SHOP.importKinds}
        onChange={(chosen) => {
          setKind(chosen as ImportKind);
          setList((old) => (old === null ? null : { ...old, kind: chosen as ImportKind, mapping: null }));
        }}
      />
      <label className="field plain-field">
        {SHOP.file}
        <input type="file" accept=".csv,.txt,text/csv" onChange={({ target }) => void open(target.files?.[0])} />
      </label>
      {refusal !== null && (
        <p role="alert" className="field-problem">
          {refusal}
        </p>
      )}
      {list !== null && (
        <ImportPreview
          list={list}
          onMap={(mapping) => setList({ ...list, mapping })}
          onDone={(taken) => {
            setDone(taken);
            setList(null);
          }}
        />
      )}
    </>
  );
}

function Undo({ done, onUndone }: { readonly done: Done; onUndone(): void }) {
  const [key] = useState(newKey);
  const undo = useWrite(
    (id: string) => answered(shop.imports[":id"].undo.$post({ param: { id } }, { headers: { "Idempotency-Key": key } })),
    IMPORT_TOUCHES,
  );
  return (
    <div role="status">
      <p>{undo.data === undefined ? SHOP.done(done.added, done.alreadyThere) : SHOP.undone(undo.data.takenOut)}</p>
      {undo.data === undefined ? (
        <button type="button" className="button" disabled={undo.isPending} onClick={() => undo.mutate(done.importId)}>
          {SHOP.undo}
        </button>
      ) : (
        <button type="button" className="button" onClick={onUndone}>
          {SHOP.seen}
        </button>
      )}
      <WriteFault error={undo.error} />
    </div>
  );
}
