import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import type { House, Pattern } from "#contract/records/place";
import { hasSettled } from "#engine/learning/house/correct";
import { TAUGHT } from "#words/en/rooms/taught";
import { usePool } from "../../client/poolHere.ts";
import type { Json } from "../../jobFile/jobDraft.ts";
import { Computing } from "../../pieces/Computing.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useNotesOfHouse } from "../../shop/usePlaces.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";
import { HouseAnswerTables } from "./HouseAnswerTables.tsx";
import { type Lack, MOST_BOWLERS, shotsPerBowler, sorted, taughtFileOf, type UsableNote } from "./taughtFile.ts";
import { useHouseAnswer } from "./useHouseAnswer.ts";

interface HouseTaughtProps {
  readonly house: House;
  readonly pattern: Pattern;
}

/** What the shots noted in a house on one oil tell of it; kept with the house, a finish plan can take it. */
export function HouseTaught({ house, pattern }: HouseTaughtProps) {
  const notes = useNotesOfHouse(house.id);
  return (
    <section className="plate taught">
      <h2>{TAUGHT.title}</h2>
      <p className="note">{TAUGHT.what}</p>
      <Reading of={notes}>
        {({ items }) => {
          const { usable, lacks } = sorted(items, pattern.id);
          return (
            <>
              <p>
                {TAUGHT.used(usable.length, items.length, pattern.name)} {lacksText(lacks)}
              </p>
              {usable.length === 0 ? (
                <p className="nothing">{TAUGHT.none}</p>
              ) : (
                <OfBowlers key={pattern.id} usable={usable} house={house} pattern={pattern} />
              )}
            </>
          );
        }}
      </Reading>
      <KeptTaught house={house} />
    </section>
  );
}

function lacksText(lacks: Readonly<Record<Lack, number>>): string {
  const told = (Object.keys(lacks) as Lack[]).filter((lack) => lacks[lack] > 0).map((lack) => TAUGHT.unused[lack](lacks[lack]));
  return told.length === 0 ? "" : `(${told.join("; ")})`;
}

interface OfBowlersProps extends HouseTaughtProps {
  readonly usable: readonly UsableNote[];
}

/** All bowlers' shots together: what is the house's is the same for all, what is a hand's is each one's own. */
function OfBowlers({ usable, house, pattern }: OfBowlersProps) {
  const shots = shotsPerBowler(usable).slice(0, MOST_BOWLERS);
  const bowlerIds = shots.map(([id]) => id);
  const notes = usable.filter(({ bowlerId }) => bowlerIds.includes(bowlerId));
  const ballIds = [...new Set(notes.map(({ ballId }) => ballId))];
  const bowlers = useRead(["bowlers", "of-notes", ...bowlerIds], () => readAll(bowlerIds, bowlerOf));
  const balls = useRead(["balls", "of-notes", ...ballIds], () => readAll(ballIds, ballOf));
  return (
    <Reading of={bowlers}>
      {(readBowlers) => (
        <Reading of={balls}>
          {(readBalls) => (
            <>
              <p>
                {TAUGHT.from(shots.map(([id, count]) => TAUGHT.ofShots(readBowlers.get(id)?.name ?? "", count)))}
                {notes.length < usable.length && ` ${TAUGHT.leftOut(usable.length - notes.length, MOST_BOWLERS)}`}
              </p>
              <Learning file={taughtFileOf(notes, readBowlers, readBalls, pattern)} house={house} pattern={pattern} />
            </>
          )}
        </Reading>
      )}
    </Reading>
  );
}

interface LearningProps extends HouseTaughtProps {
  readonly file: Json;
}

function Learning({ file, house, pattern }: LearningProps) {
  const state = useHouseAnswer(usePool());
  const { told } = state;
  return (
    <>
      <Computing
        status={state.status}
        progress={null}
        words={TAUGHT}
        hint={told === null ? TAUGHT.notYet : null}
        failure={state.failure === null ? null : TAUGHT.failed(state.failure)}
        onCompute={() => state.compute(file)}
        onStop={state.stop}
      />
      {state.problems.map(({ path, value, allowed }) => (
        <p key={path} className="failed">
          {path}: {value} – {allowed}
        </p>
      ))}
      {told !== null && (
        <>
          {told.file !== JSON.stringify(file) && <p className="note">{TAUGHT.old}</p>}
          <HouseAnswerTables told={told.answer} />
          {hasSettled(told.answer.correction) && <Keep house={house} patternId={pattern.id} learned={told.answer.house} />}
        </>
      )}
    </>
  );
}

interface KeepProps {
  readonly house: House;
  readonly patternId: string;
  readonly learned: NonNullable<House["taught"]>["house"];
}

function Keep({ house, patternId, learned }: KeepProps) {
  const change = useChangeTaught(house);
  const isKept = JSON.stringify(house.taught?.house) === JSON.stringify(learned);
  return (
    <>
      <For least="technician">
        <button
          type="button"
          className="button primary"
          disabled={isKept || change.isPending}
          onClick={() => change.mutate({ at: new Date().toISOString(), patternId, house: learned })}
        >
          {TAUGHT.keep}
        </button>
      </For>
      {isKept && (
        <p className="note" role="status">
          {TAUGHT.kept}
        </p>
      )}
      <WriteFault error={change.error} />
    </>
  );
}

/** What is kept with the house, and the way to take it off again. */
function KeptTaught({ house }: { readonly house: House }) {
  const times = useShopTimes();
  const change = useChangeTaught(house);
  if (house.taught === null) return null;
  return (
    <p>
      {TAUGHT.keptAt(house.taught.house.shots, times.day(house.taught.at))}{" "}
      <For least="technician">
        <button type="button" className="button" disabled={change.isPending} onClick={() => change.mutate(null)}>
          {TAUGHT.takeOff}
        </button>
      </For>
      <WriteFault error={change.error} />
    </p>
  );
}

function useChangeTaught(house: House) {
  return useWrite(
    (taught: House["taught"]) => answered(shop.houses[":id"].$patch({ param: { id: house.id }, json: { taught }, header: madeOn(house) })),
    ["houses"],
  );
}

async function readAll<T>(ids: readonly string[], read: (id: string) => Promise<T>): Promise<ReadonlyMap<string, T>> {
  return new Map(await Promise.all(ids.map(async (id): Promise<[string, T]> => [id, await read(id)])));
}

function bowlerOf(id: string): Promise<Bowler> {
  return answered(shop.bowlers[":id"].$get({ param: { id } }));
}

function ballOf(id: string): Promise<Ball> {
  return answered(shop.balls[":id"].$get({ param: { id } }));
}
