import { useQueries } from "@tanstack/react-query";
import { useState } from "react";
import type { Bowler } from "#contract/records/bowler";
import type { ShotNote } from "#contract/records/shotNote";
import { SHOT_NOTES } from "#words/en/rooms/lanes";
import { useComputed } from "../../client/poolHere.ts";
import type { LeaveSeen } from "../../client/protocol.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { WordField } from "../../pieces/PlainFields.tsx";
import { answered, shop } from "../../shop/shopClient.ts";

/** Fewer shots than this explain nothing: one leave has many causes. */
const LEAST_SHOTS = 3;

/** What one bowler's shots on this lane left, and which hits explain it. */
export function WhatLeavesSay({ notes }: { readonly notes: readonly ShotNote[] }) {
  const withLeave = notes.filter(({ leave }) => leave !== null);
  const ids = [...new Set(withLeave.map(({ bowlerId }) => bowlerId ?? ""))];
  const bowlers = useQueries({
    queries: ids.map((id) => ({
      queryKey: ["bowlers", id],
      queryFn: () => answered(shop.bowlers[":id"].$get({ param: { id } })),
      enabled: id !== "",
      networkMode: "always" as const,
    })),
  });
  const [chosen, setChosen] = useState<string | null>(null);
  const whose = chosen !== null && ids.includes(chosen) ? chosen : (ids[0] ?? "");
  const bowler = bowlers[ids.indexOf(whose)]?.data ?? null;
  const shots = withLeave.filter(({ bowlerId }) => (bowlerId ?? "") === whose);
  return (
    <section className="plate">
      <h2>{SHOT_NOTES.say}</h2>
      {ids.length > 0 && (
        <WordField
          label={SHOT_NOTES.sayWhose}
          value={whose}
          words={Object.fromEntries(ids.map((id, i) => [id, bowlers[i].data?.name ?? SHOT_NOTES.nobody]))}
          onChange={setChosen}
        />
      )}
      {shots.length < LEAST_SHOTS ? (
        <p className="nothing">{SHOT_NOTES.tooFew(LEAST_SHOTS)}</p>
      ) : (
        <Told seen={counted(shots)} shots={shots.length} bowler={bowler} />
      )}
    </section>
  );
}

interface ToldProps {
  readonly seen: readonly LeaveSeen[];
  readonly shots: number;
  readonly bowler: Bowler | null;
}

function Told({ seen, shots, bowler }: ToldProps) {
  const hand = bowler?.hand ?? null;
  const told = useComputed({ kind: "leaves", seen, hand: hand ?? "right" }).data;
  if (told === undefined) return null;
  return (
    <>
      <p className="note">
        {SHOT_NOTES.sayAll(shots)}. {hand === null ? SHOT_NOTES.handUnknown : hand === "left" ? SHOT_NOTES.leftHand : ""}
      </p>
      {told.picture !== null && <Chart svg={told.picture} className="leaves" file="leaves" />}
      {told.meanings.length > 0 && (
        <ul>
          {told.meanings.map((meaning) => (
            <li key={meaning}>{meaning}</li>
          ))}
        </ul>
      )}
      {told.explained.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </>
  );
}

function counted(shots: readonly ShotNote[]): readonly LeaveSeen[] {
  const counts = new Map<string, LeaveSeen>();
  for (const { leave } of shots) {
    const pins = leave ?? [];
    const known = counts.get(pins.join());
    counts.set(pins.join(), { pins, count: (known?.count ?? 0) + 1 });
  }
  return [...counts.values()];
}
