import { useEffect } from "react";
import { Link } from "wouter";
import type { House, Lane, Pattern } from "#contract/records/place";
import type { ShotNote } from "#contract/records/shotNote";
import { LANES, OIL } from "#words/en/rooms/lanes";
import { WordField } from "../../pieces/PlainFields.tsx";
import { Reading } from "../../shop/Reading.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useKept } from "../../shop/useKept.ts";
import { useHouse, useNotesOf, usePatterns } from "../../shop/usePlaces.ts";
import { For } from "../../shop/useSession.tsx";
import { useRead } from "../../shop/useShop.ts";
import { HouseTaught } from "./HouseTaught.tsx";
import { NotesOfLane } from "./NotesOfLane.tsx";
import { OilInPlay } from "./OilInPlay.tsx";
import { OilOnLane } from "./OilOnLane.tsx";
import { ShotNoteForm } from "./ShotNoteForm.tsx";
import { WhatLeavesSay } from "./WhatLeavesSay.tsx";

/** One lane: its oil, a shot in three taps, the shots that were seen, and what they say. */
export function LaneRoom({ params }: { readonly params: Readonly<Record<string, string>> }) {
  const lane = useRead(["lanes", params.id], () => answered(shop.lanes[":id"].$get({ param: { id: params.id } })));
  const house = useHouse(lane.data?.houseId);
  const patterns = usePatterns(lane.data?.houseId);
  const notes = useNotesOf(params.id);
  return (
    <main id="answer" className="room lane" tabIndex={-1}>
      <Reading of={lane}>
        {(ofLane) => (
          <Reading of={house}>
            {(ofHouse) => (
              <Reading of={patterns}>
                {({ items }) => (
                  <Reading of={notes}>
                    {(ofNotes) => <WholeLane lane={ofLane} house={ofHouse} patterns={items} notes={ofNotes.items} />}
                  </Reading>
                )}
              </Reading>
            )}
          </Reading>
        )}
      </Reading>
    </main>
  );
}

interface WholeLaneProps {
  readonly lane: Lane;
  readonly house: House;
  readonly patterns: readonly Pattern[];
  readonly notes: readonly ShotNote[];
}

function WholeLane({ lane, house, patterns, notes }: WholeLaneProps) {
  const title = LANES.laneOf(lane.number, house.name);
  // Empty: as the last shot was noted, else the house's first. No shop is asked what it laid today: it may not know.
  const [chosen, setChosen] = useKept(`gritwright.lanePattern.${lane.id}`, () => "");
  const patternId = (chosen === "" ? notes.find((note) => note.patternId !== null)?.patternId : chosen) ?? patterns[0]?.id;
  const pattern = patterns.find(({ id }) => id === patternId) ?? null;
  useEffect(() => {
    document.title = title;
  }, [title]);
  return (
    <>
      <h1>{title}</h1>
      <section className="plate">
        <div className="take-finish">
          <WordField label={OIL.onLane} value={pattern?.id ?? ""} words={patternWords(patterns)} onChange={setChosen} />
          {pattern !== null && (
            <Link href={`/patterns/${pattern.id}`} className="button">
              {OIL.change}
            </Link>
          )}
          <Link href="/lanes" className="button">
            {LANES.title}
          </Link>
        </div>
      </section>
      <div className="room-columns">
        <For least="technician">
          <ShotNoteForm lane={lane} patternId={pattern?.id ?? null} />
        </For>
        <WhatLeavesSay notes={notes} />
      </div>
      <section className="plate">
        <h2>{OIL.title}</h2>
        {pattern === null ? <p className="nothing">{OIL.noPatternYet}</p> : <OilOnLane oil={pattern.oil} title={pattern.name} />}
      </section>
      {pattern !== null && <OilInPlay key={pattern.id} laneId={lane.id} pattern={pattern} />}
      {pattern !== null && <HouseTaught house={house} pattern={pattern} />}
      <NotesOfLane lane={lane} notes={notes} />
    </>
  );
}

function patternWords(patterns: readonly Pattern[]): Readonly<Record<string, string>> {
  return { ...(patterns.length === 0 ? { "": OIL.noPattern } : {}), ...Object.fromEntries(patterns.map(({ id, name }) => [id, name])) };
}
