import { useDeferredValue, useEffect } from "react";
import { Link, useLocation, useSearchParams } from "wouter";
import type { Pattern } from "#contract/records/place";
import { LANES, OIL } from "#words/en/rooms/lanes";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, newKey, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { OilForm } from "./OilForm.tsx";
import { OilOnLane } from "./OilOnLane.tsx";
import { draftOf, emptyOil, type OilDraft, oilOf, problemsOfOil } from "./oilDraft.ts";

/** A pattern written down, or changed; what is typed is drawn as soon as it fits. */
export function PatternRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const houseId = useSearchParams()[0].get("house");
  return (
    <main id="answer" className="room pattern" tabIndex={-1}>
      {params.id === "new" ? <Writing key={`new ${houseId}`} pattern={null} houseId={houseId} /> : <Kept id={params.id} />}
    </main>
  );
}

function Kept({ id }: { readonly id: string }) {
  const pattern = useRead(["patterns", id], () => answered(shop.patterns[":id"].$get({ param: { id } })));
  return <Reading of={pattern}>{(read) => <Writing key={read.id} pattern={read} houseId={read.houseId} />}</Reading>;
}

interface PatternDraft {
  readonly key: string;
  readonly oil: OilDraft;
}

function begun(pattern: Pattern | null): PatternDraft {
  const key = newKey();
  return { key, oil: pattern === null ? emptyOil(key) : draftOf(pattern.name, pattern.oil, newKey) };
}

function Writing({ pattern, houseId }: { readonly pattern: Pattern | null; readonly houseId: string | null }) {
  const [draft, setDraft] = useKept(`gritwright.pattern.${pattern?.id ?? `new.${houseId}`}.${pattern?.version ?? 0}`, () => begun(pattern));
  const [, go] = useLocation();
  const { oil } = draft;
  const problems = problemsOfOil(oil);
  const fits = Object.keys(problems).length === 0;
  const drawn = useDeferredValue(fits ? oilOf(oil) : null);
  const write = useWrite(() => kept(pattern, houseId, draft), ["patterns"]);
  const title = pattern?.name ?? OIL.newPattern;
  useEffect(() => {
    document.title = `${OIL.patternTitle}: ${title}`;
  }, [title]);
  return (
    <>
      <div className="room-head">
        <h1>{title}</h1>
        <Link href="/lanes" className="button">
          {LANES.title}
        </Link>
      </div>
      <div className="room-columns">
        <form
          className="plate"
          onSubmit={(event) => {
            event.preventDefault();
            if (!fits || oil.name.trim() === "") return;
            write.mutate(undefined, {
              onSuccess: ({ id }) => {
                setDraft(begun(null));
                go(`/patterns/${id}`);
              },
            });
          }}
        >
          <OilForm draft={oil} problems={problems} onChange={(next) => setDraft((old) => ({ ...old, oil: next }))} />
          <For least="technician">
            <button type="submit" className="button primary wide" disabled={!fits || oil.name.trim() === "" || write.isPending}>
              {OIL.keep}
            </button>
          </For>
          <WriteFault error={write.error} />
        </form>
        <section className="plate">
          <h2>{OIL.preview}</h2>
          {drawn === null ? <p className="nothing">{OIL.notYet}</p> : <OilOnLane oil={drawn} title={oil.name === "" ? title : oil.name} />}
        </section>
      </div>
    </>
  );
}

function kept(pattern: Pattern | null, houseId: string | null, { key, oil }: PatternDraft): Promise<Pattern> {
  const json = { name: oil.name.trim(), oil: oilOf(oil) };
  if (pattern === null) return answered(shop.patterns.$post({ json: { ...json, houseId } }, { headers: { "Idempotency-Key": key } }));
  return answered(shop.patterns[":id"].$patch({ param: { id: pattern.id }, json, header: madeOn(pattern) }));
}
